// Photos in the file of everything: the page puts them behind what the bench wrote, and takes them off before the bench
// reads it. A photo goes by the id that its lure has in the file.

const base64 = (blob) => new Promise((resolve, reject) => {
  const reader = new FileReader();
  reader.onload = () => resolve(reader.result.slice(reader.result.indexOf(",") + 1));
  reader.onerror = () => reject(reader.error);
  reader.readAsDataURL(blob);
});

/** A JPEG as it was, or null where the text is none. */
export function jpegFrom(text) {
  try {
    return new Blob([Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))], { type: "image/jpeg" });
  } catch {
    return null;
  }
}

/** The bench's file with these entries, [{lure, time, text, blob}], behind it. In parts: photos may be many. */
export async function withPhotos(file, entries) {
  if (entries.length === 0) return file;
  const pieces = [file.slice(0, file.lastIndexOf("}")), ',\n"photos": ['];
  for (const [i, { lure, time, text, blob }] of entries.entries()) {
    const jpeg = blob ? await base64(blob) : null;
    pieces.push(i === 0 ? "\n" : ",\n", JSON.stringify({ lure, time, text, jpeg }));
  }
  pieces.push("]}\n");
  return new Blob(pieces);
}

const lastMs = 8.64e15; // the last moment that a Date can name
const longestText = 400; // as in the page's own field

const isEntry = (entry) =>
  typeof entry?.lure === "string" && typeof entry.time === "number" && entry.time >= 0 && entry.time <= lastMs &&
  typeof entry.text === "string" && entry.text.length <= longestText &&
  (entry.jpeg === null || typeof entry.jpeg === "string");

/** {file, photos}: a file of everything parted again. What is no photo is left in the file, for the bench to refuse. */
export function withoutPhotos(text) {
  try {
    const { photos, ...rest } = JSON.parse(text);
    if (Array.isArray(photos) && photos.every(isEntry)) return { file: JSON.stringify(rest), photos };
  } catch {
    // The bench says what is wrong with it.
  }
  return { file: text, photos: [] };
}
