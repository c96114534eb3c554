import { accessSync, constants, statSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Names under which systems install a browser that Playwright's Chromium driver can run. */
const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
  "msedge",
];

/** Switches for a browser that does nothing on its own: no first-run pages, updates or sync. */
export const BROWSER_ARGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/**
 * The browser to drive: `PINTRUTH_BROWSER` if set, else the first known one on the PATH, else
 * undefined, which lets Playwright take its own.
 *
 * @returns {string | undefined} an absolute path
 */
export const browserOnPath = () => process.env.PINTRUTH_BROWSER || programOnPath(NAMES);

/**
 * The first of these programs on the PATH.
 *
 * @param {readonly string[]} names without an ending
 * @returns {string | undefined} an absolute path
 */
export function programOnPath(names) {
  const ending = process.platform === "win32" ? ".exe" : "";
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    if (folder === "") continue;
    for (const name of names) {
      const path = join(folder, name + ending);
      if (isProgram(path)) return path;
    }
  }
  return undefined;
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
