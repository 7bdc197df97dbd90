// The page's HTML in the reader's language. Every text is written in English, by index.html or by script; here each is
// said in the language of the bench as it appears, by the bench's own catalogue. What has translate="no" stays: what the
// builder has typed, and the sheet, which is said already.

/** For times and dates: the device's own way where it speaks the bench's language, else that language's. */
export const locale = () => {
  const { lang } = document.documentElement;
  return navigator.language?.startsWith(lang) ? [] : lang;
};

const attributes = ["aria-label", "alt", "placeholder", "title"];

/** Watches the page's texts; returns the function that says all of them again, in another language. */
export function createSpeaker(core) {
  const known = new WeakMap(); // node → { english, said } by attribute, "" for a text

  function say(node, name, now, put) {
    const last = known.get(node)?.[name];
    const english = last && last.said === now ? last.english : now;
    if (!/[A-Za-z]{2}|\d/.test(english)) return;
    const [, before, words, behind] = english.match(/^(\s*)(.*?)(\s*)$/s);
    const said = before + core.said(words.replace(/\s+/g, " ")) + behind;
    if (said === english && !last) return;
    known.set(node, { ...known.get(node), [name]: { english, said } });
    if (said !== now) put(said);
  }

  function sayAll(root) {
    const element = root.nodeType === Node.TEXT_NODE ? root.parentElement : root;
    if (!element || element.closest("[translate=no], .leaf, script, style, noscript")) return;
    if (root.nodeType === Node.TEXT_NODE) {
      say(root, "", root.data, (said) => { root.data = said; });
      return;
    }
    for (const name of attributes) {
      if (root.hasAttribute(name)) say(root, name, root.getAttribute(name), (said) => root.setAttribute(name, said));
    }
    for (const child of root.childNodes) {
      if (child.nodeType === Node.TEXT_NODE || child.nodeType === Node.ELEMENT_NODE) sayAll(child);
    }
  }

  const watch = { subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: attributes };
  const observer = new MutationObserver((changes) => {
    for (const { type, target, addedNodes } of changes) {
      for (const node of type === "childList" ? addedNodes : [target]) {
        if (node.nodeType === Node.TEXT_NODE || node.nodeType === Node.ELEMENT_NODE) sayAll(node);
      }
    }
    observer.takeRecords(); // its own changes
  });
  observer.observe(document.body, watch);
  return (code) => {
    document.documentElement.lang = code;
    sayAll(document.body);
    observer.takeRecords();
  };
}
