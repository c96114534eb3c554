import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./project.mjs";

/**
 * One hash over the contents and names of files. Times of change are left out on purpose: a
 * checkout of an older commit gives old contents with new times.
 *
 * @param {readonly string[]} paths files and folders, relative to the project; missing ones are skipped
 * @param {(path: string) => boolean} [keep] whether a file or folder inside them counts
 * @returns {string} hexadecimal
 */
export function hashOf(paths, keep = () => true) {
  const hash = createHash("sha256");
  for (const path of paths) {
    for (const file of filesUnder(path, keep)) {
      // Latin-1: one character a byte, so that two files never read alike.
      hash.update(`${file}\0${readFileSync(join(ROOT, file), "latin1")}\0`);
    }
  }
  return hash.digest("hex");
}

/**
 * Every file at or under a path, sorted, with forward slashes.
 *
 * @param {string} path relative to the project
 * @param {(path: string) => boolean} [keep]
 * @returns {string[]}
 */
export function filesUnder(path, keep = () => true) {
  const full = join(ROOT, path);
  if (!existsSync(full) || !keep(path)) return [];
  if (statSync(full).isFile()) return [path];
  return readdirSync(full)
    .sort()
    .flatMap((name) => filesUnder(`${path}/${name}`, keep));
}
