// Measures a printed file: page sizes and lengths on the pages, read by poppler.

import { execFileSync } from "node:child_process";

const mm = (points) => (Number(points) / 72) * 25.4;

/** [width, height] of every page in mm. */
export function pagesOf(file) {
  const text = execFileSync("pdfinfo", ["-f", "1", "-l", "99", file], { encoding: "utf8" });
  return [...text.matchAll(/size:\s+([\d.]+) x ([\d.]+) pts/g)].map(([, w, h]) => [mm(w), mm(h)]);
}

/** Distance between the centres of the numbers `from` and `to` on every scale of the drawings, in mm. */
export function scales(file, from, to) {
  const text = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" });
  const words = [...text.matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="[\d.]+">([^<]*)</g)]
    .map(([, left, top, right, word]) => ({ x: (mm(left) + mm(right)) / 2, y: mm(top), word }));
  return words.filter(({ word }) => word === from).flatMap((a) =>
    words.filter((b) => b.word === to && Math.abs(a.y - b.y) < 0.05).map((b) => b.x - a.x));
}
