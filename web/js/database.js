// The browser's database for pictures: what is laid behind the drawing, and the photos of a lure. Nothing in it leaves
// the device.

const database = "evenfall";
const stores = ["pictures", "photos"];
const longestSide = 1600;

const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

/** Runs `work` on one of the stores; undefined where the browser has no database or the work failed. */
export async function onStore(name, mode, work) {
  try {
    const open = indexedDB.open(database, stores.length);
    open.onupgradeneeded = () => {
      const base = open.result;
      for (const store of stores) if (!base.objectStoreNames.contains(store)) base.createObjectStore(store);
    };
    const base = await done(open);
    try {
      return await done(work(base.transaction(name, mode).objectStore(name)));
    } finally {
      base.close();
    }
  } catch {
    return undefined;
  }
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
