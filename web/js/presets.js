// The demo lures that come with the page.

const isPreset = (file) => /^presets\/[^/]+\.json$/.test(file) && !file.endsWith(".schema.json");

/** All of them as {name, text}; the name is the file's own without its ending. */
export function fetchPresets() {
  const files = JSON.parse(document.querySelector("meta[name=evenfall-files]").content);
  return Promise.all(files.filter(isPreset).map(fetchOne));
}

async function fetchOne(file) {
  const answer = await fetch(new URL(`../${file}`, import.meta.url));
  if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
  return { name: file.replace(/^presets\/|\.json$/g, ""), text: await answer.text() };
}
