// Paths of what is tested, from the environment set by ctest (or by whoever runs one file by hand).

import { createRequire } from "node:module";
import { existsSync, mkdirSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

function needed(name, what) {
  const path = process.env[name];
  if (!path) throw new Error(`Set ${name} to ${what}.`);
  if (!existsSync(path)) throw new Error(`${name} names ${path}, which is not there; it has to be ${what}.`);
  return resolve(path);
}

/** The assembled page. */
export const pageDir = needed("EVENFALL_PAGE_DIR", "the folder of the assembled page");
/** The native program. */
export const program = needed("EVENFALL_PROGRAM", "the native program evenfall");
/** The page's own modules, before they are bundled. */
export const modulesDir = needed("EVENFALL_SOURCE", "the top of the project") + "/web/js";
/** The page as one file. */
export const oneFile = process.env.EVENFALL_ONE_FILE ?? join(dirname(pageDir), "one-file/evenfall.html");
/** The demo presets. */
export const presetsDir = needed("EVENFALL_PRESETS", "the folder presets/");

export const chromiumPath = needed("EVENFALL_CHROMIUM", "the Chromium to drive");
const packages = needed("EVENFALL_NODE_MODULES", "the folder that holds playwright-core");
const take = createRequire(join(packages, "start.js"));
export const { chromium } = take("playwright-core");
/** The driver of the distribution's Firefox, by the standard WebDriver BiDi, and that Firefox. */
export const firefoxDriver = take("puppeteer-core");
export const firefoxPath = process.env.EVENFALL_FIREFOX ?? "/usr/bin/firefox-esr";

/** The accessibility checker's script. */
export const axeSource = join(packages, "axe-core/axe.min.js");

/** Folder for screenshots of the page. */
export const shotsDir = process.env.EVENFALL_SHOTS ?? join(dirname(pageDir), "shots");
mkdirSync(shotsDir, { recursive: true });

/** Switches of a browser that draws WebGL in software and can reach only this machine. */
export const switches = [
  "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--no-sandbox",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/** Starts such a browser; `more` are further switches. */
export const launchBrowser = (more = []) => chromium.launch({ executablePath: chromiumPath, args: [...switches, ...more] });
