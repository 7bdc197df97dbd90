// Installing the page on the device: the bench shows its row only while the browser offers it.

/** Keeps the browser's offer for the row on the shelf; returns the function that makes use of it. */
export function watchInstall(core) {
  let offer = null;
  const keep = (event) => {
    offer = event;
    core.offerInstall(offer !== null);
  };
  window.addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault(); // no banner of the browser's own over the bench
    keep(event);
  });
  window.addEventListener("appinstalled", () => keep(null));
  return () => {
    const asked = offer;
    keep(null); // an offer can be used once
    return asked?.prompt();
  };
}
