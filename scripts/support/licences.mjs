// Every package that the lock file names must be under a licence that an MIT program may ship
// with or be built by: those for other systems too, which are not installed here.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./project.mjs";

/** Permissive licences, by their SPDX names. */
const GOOD = new Set([
  "0BSD",
  "Apache-2.0",
  "Artistic-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC-BY-3.0",
  "CC-BY-4.0",
  "CC0-1.0",
  "ISC",
  "MIT",
  "MIT-0",
  "OFL-1.1",
  "Python-2.0",
  "Unlicense",
  "Zlib",
]);
/** Used as they come, to build and test; changes to their own files would have to be shared. */
const GOOD_FOR_BUILDING = new Set(["MPL-2.0"]);
/** Packages whose manifest names no licence, with the one that their licence file holds. */
const READ_BY_HAND = new Map([["png-js", "MIT"]]);

/**
 * Whether an SPDX expression can be met by the licences in `good`: one side of an OR, both of an AND.
 *
 * @param {string} expression
 * @param {(licence: string) => boolean} good
 * @returns {boolean}
 */
export function allows(expression, good) {
  const bare = expression.trim().replace(/^\((.*)\)$/s, "$1");
  const either = bare.split(/\s+OR\s+/i);
  if (either.length > 1) return either.some((part) => allows(part, good));
  const both = bare.split(/\s+AND\s+/i);
  if (both.length > 1) return both.every((part) => allows(part, good));
  return good(bare);
}

/** @returns {string[]} one line for each package that may not be used */
export function unsuitableLicences() {
  const lock = JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8"));
  const bad = [];
  for (const [path, entry] of Object.entries(lock.packages)) {
    if (path === "") continue;
    const name = path.replace(/^.*node_modules\//, "");
    const licence = entry.license ?? READ_BY_HAND.get(name) ?? "none stated";
    const good = (/** @type {string} */ one) =>
      GOOD.has(one) || (entry.dev === true && GOOD_FOR_BUILDING.has(one));
    if (!allows(licence, good)) bad.push(`${name} ${entry.version}: ${licence}`);
  }
  return bad;
}
