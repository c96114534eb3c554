import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT, say } from "./project.mjs";
import { run } from "./run.mjs";

/**
 * @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} LockEntry
 * @typedef {{ packages: Record<string, LockEntry> }} Lock
 */

/** @param {string} path @returns {Lock} */
const readLock = (path) => JSON.parse(readFileSync(path, "utf8"));

/**
 * Whether node_modules holds all that the lock file asks for. Npm keeps its own record of
 * what it put there; packages for other systems are optional and may be absent.
 *
 * @param {Lock} wanted
 * @param {Lock} found
 */
export function satisfies(wanted, found) {
  return Object.entries(wanted.packages).every(([path, entry]) => {
    if (path === "") return true;
    const there = found.packages[path];
    return there ? there.version === entry.version : entry.optional === true;
  });
}

function installed() {
  const record = join(ROOT, "node_modules", ".package-lock.json");
  return (
    existsSync(record) && satisfies(readLock(join(ROOT, "package-lock.json")), readLock(record))
  );
}

/**
 * Installs the packages of the lock file when they are missing or others.
 *
 * @returns {Promise<boolean>} false when that failed; npm has then said why on stderr
 */
export async function ensureInstalled() {
  if (installed()) return true;
  say("Installing packages ...");
  // Development packages build the app, so they are wanted whatever NODE_ENV says.
  const status = await run("npm", [
    "ci",
    "--include=dev",
    "--no-audit",
    "--no-fund",
    "--loglevel=error",
  ]);
  if (status !== 0) say("npm ci failed: see its message above.");
  return status === 0;
}
