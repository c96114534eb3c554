import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { ROOT, say } from "./project.mjs";
import { runNode } from "./run.mjs";
import { hashOf } from "./sources.mjs";

const STAMP = ".built-from";
const VITE = "node_modules/vite/bin/vite.js";
/** Only the browser's part of the program needs these: the command line is not rebuilt for them. */
const SCREEN_ONLY = ["src/editor", "src/session"];

/**
 * @typedef {object} Bundle
 * @property {string} name what a message calls it
 * @property {string} folder where it is put, relative to the project
 * @property {readonly string[]} args for `vite build`, without the folder
 * @property {() => string} hash of everything it is made from
 */

/** The app that the browser loads. @type {Bundle} */
export const APP = {
  name: "the app",
  folder: "dist",
  args: [],
  hash: () =>
    hashOf([
      "src",
      "public",
      "sample-data",
      "index.html",
      "vite.config.ts",
      "tsconfig.json",
      "package-lock.json",
    ]),
};

/** The command line, for Node. @type {Bundle} */
export const CLI = {
  name: "the command line",
  folder: "dist-cli",
  args: ["--config", "vite.cli.config.ts"],
  hash: () =>
    hashOf(
      ["src", "vite.cli.config.ts", "package-lock.json"],
      (path) => !SCREEN_ONLY.includes(path),
    ),
};

/** Whether the bundle is there and made from the sources as they are now. */
function fresh(/** @type {Bundle} */ bundle, /** @type {string} */ hash) {
  const stamp = join(ROOT, bundle.folder, STAMP);
  return existsSync(stamp) && readFileSync(stamp, "utf8") === hash;
}

/**
 * Builds a bundle unless it is up to date.
 *
 * @param {Bundle} bundle
 * @param {{ quiet?: boolean }} [options] `quiet`: says nothing unless it fails
 * @returns {Promise<boolean>} false when the build failed; its message is then on stderr
 */
export async function ensureBuilt(bundle, options = {}) {
  const hash = bundle.hash();
  if (fresh(bundle, hash)) return true;
  if (!options.quiet) say(`Building ${bundle.name} ...`);
  // Built aside and moved into place, so that nobody is served half of it.
  const aside = `.cache/build-${bundle.folder}-${process.pid}`;
  const args = [VITE, "build", ...bundle.args, "--outDir", aside, "--emptyOutDir"];
  const status = await runNode([...args, "--logLevel", "error"]);
  if (status !== 0) {
    rmSync(join(ROOT, aside), { recursive: true, force: true });
    say(`Building ${bundle.name} failed: see the message above.`);
    return false;
  }
  writeFileSync(join(ROOT, aside, STAMP), hash);
  moveIntoPlace(join(ROOT, aside), join(ROOT, bundle.folder));
  return true;
}

function moveIntoPlace(/** @type {string} */ from, /** @type {string} */ to) {
  const old = `${from}-old`;
  mkdirSync(dirname(to), { recursive: true });
  if (existsSync(to)) renameSync(to, old);
  renameSync(from, to);
  rmSync(old, { recursive: true, force: true });
}
