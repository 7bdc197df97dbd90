// The browser's database: the pictures behind the drawing, the photos of a lure, and the journal of what is kept. Nothing in it
// leaves the device.

const database = "evenfall";
const stores = ["pictures", "photos", "journal"];
const patienceMs = 10_000;
const longestSide = 1600;

const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function run(name, mode, work) {
  const open = indexedDB.open(database, stores.length);
  open.onupgradeneeded = () => {
    const base = open.result;
    for (const store of stores) if (!base.objectStoreNames.contains(store)) base.createObjectStore(store);
  };
  const base = await done(open);
  try {
    const transaction = base.transaction(name, mode, { durability: "strict" });
    const ended = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
    const [result] = await Promise.all([done(work(transaction.objectStore(name))), ended]);
    return result;
  } finally {
    base.close();
  }
}

/**
 * Runs `work` on one of the stores and waits until the disk has what it has written; undefined where the browser has no database,
 * where that does not answer in time, and where the work failed.
 */
export function onStore(name, mode, work) {
  const late = new Promise((resolve) => setTimeout(resolve, patienceMs));
  return Promise.race([run(name, mode, work).catch(() => undefined), late]);
}

/** A file's picture on a canvas, upright, no longer than 1600 px; throws where it is none. */
export async function drawn(blob) {
  const bitmap = await createImageBitmap(blob, { imageOrientation: "from-image" });
  const scale = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const brush = canvas.getContext("2d", { willReadFrequently: true });
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return canvas;
}

/** The canvas as a JPEG; null where the browser cannot. */
export const jpegOf = (canvas, quality) => new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
