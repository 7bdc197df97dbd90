// The native program, for comparison.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { presetsDir, program } from "./settings.mjs";

/** Paths of all demo presets. */
export const presets = readdirSync(presetsDir)
  .filter((name) => name.endsWith(".json") && !name.endsWith(".schema.json"))
  .map((name) => join(presetsDir, name));

/** Runs the program with --json; with status 1 (a target that cannot be met) it still prints answers. */
export function ask(...words) {
  const run = spawnSync(program, [...words, "--json"], { encoding: "utf8" });
  assert.ok(run.status === 0 || run.status === 1, `evenfall ${words.join(" ")}: ${run.stderr || run.error}`);
  return JSON.parse(run.stdout);
}
