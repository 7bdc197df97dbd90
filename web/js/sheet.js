// The build sheet over the canvas, as it prints: the core's own pages in the document itself, so that the browser
// can print them and screen readers can read them.

import { textScale } from "./canvas.js";
import { message, part } from "./dialogs.js";
import { saveDialog } from "./files.js";
import { words } from "./words.js";

const most = 8; // greatest zoom relative to the window

/** The page's own address, which opens a share text behind '#'; a page on a disk has none that is of use to others. */
const address = () => (location.protocol === "file:" ? "" : location.href.split("#")[0]);

/** Page size and typefaces, as in the file's own style; made as a style rule, so that no element has inline style. */
function prepareStyle(core) {
  for (const [semibold, weight] of [[false, "400"], [true, "600"]]) {
    document.fonts.add(new FontFace("evenfall-sheet", core.typeface(semibold).buffer, { weight }));
  }
  const paper = new CSSStyleSheet();
  return (width, height) => {
    if (width) paper.replaceSync(`@page{size:${width} ${height};margin:0}`);
    document.adoptedStyleSheets = width ? [paper] : [];
  };
}

/** Two fingers, or the wheel with Ctrl, zoom the pages about their place. */
function watchPinch(place) {
  let zoom = 1;
  let spread = 0;
  const zoomTo = (wanted, x, y) => {
    const box = place.getBoundingClientRect();
    const before = zoom;
    zoom = Math.min(most, Math.max(1, wanted));
    const [inX, inY] = [x - box.left, y - box.top];
    const [atX, atY] = [place.scrollLeft + inX, place.scrollTop + inY];
    place.style.setProperty("--zoom", zoom);
    place.scrollTo((atX * zoom) / before - inX, (atY * zoom) / before - inY);
  };
  const read = ({ touches: [a, b] }) => ({
    apart: Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY),
    x: (a.clientX + b.clientX) / 2,
    y: (a.clientY + b.clientY) / 2,
  });
  place.addEventListener("touchstart", (event) => {
    if (event.touches.length === 2) spread = read(event).apart / zoom;
  }, { passive: true });
  place.addEventListener("touchmove", (event) => {
    if (event.touches.length !== 2) return;
    event.preventDefault();
    const { apart, x, y } = read(event);
    if (spread > 0) zoomTo(apart / spread, x, y);
  }, { passive: false });
  place.addEventListener("wheel", (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoomTo(zoom * Math.exp(-event.deltaY / 300), event.clientX, event.clientY);
  }, { passive: false });
  place.addEventListener("keydown", (event) => {
    event.stopPropagation(); // the bench listens at the window and would take the arrow keys
    const box = place.getBoundingClientRect();
    const factor = { "+": 1.25, "=": 1.25, "-": 0.8 }[event.key];
    if (factor && !event.ctrlKey && !event.metaKey) zoomTo(zoom * factor, box.left + box.width / 2, box.top + box.height / 2);
  });
}

export function createSheet(getCore) {
  const place = part("sheet");
  let drawn = -1;
  let setPaper = null;

  function draw() {
    const core = getCore();
    setPaper ??= prepareStyle(core);
    place.innerHTML = new TextDecoder().decode(core.sheet("leaves", address()));
    const page = place.querySelector("svg");
    if (page) setPaper(page.getAttribute("width"), page.getAttribute("height"));
    else setPaper();
  }

  watchPinch(place);
  return {
    show(x, y, w, h, revision) {
      const letters = textScale(); // the bench's pixels scale with its text size
      for (const [name, value] of Object.entries({ left: x, top: y, width: w, height: h })) place.style.setProperty(name, `${letters * value}px`);
      place.hidden = false;
      document.documentElement.classList.add("with-sheet");
      if (revision === drawn) return;
      drawn = revision;
      draw();
    },
    hide() {
      place.hidden = true;
      document.documentElement.classList.remove("with-sheet");
      document.adoptedStyleSheets = [];
      drawn = -1;
    },
    print() {
      if (typeof window.print === "function") window.print();
      else message(words.sheet.noPrint);
    },
    async save(name) {
      const bytes = getCore().sheet(name.split(".").at(-1), address());
      if (bytes.length === 0) message(place.textContent.trim());
      else if (await saveDialog(name, bytes, "other")) getCore().say(words.save.done(name));
    },
  };
}
