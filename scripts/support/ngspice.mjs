import { existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { programOnPath } from "./browser.mjs";
import { ROOT } from "./project.mjs";

/** Ngspice compiled for JavaScript (the wrapper is MIT, ngspice itself BSD), for want of the program. */
export const ENGINE = { name: "eecircuit-engine", version: "1.8.0" };

/** Where the set-up puts it: beside the project's own packages, not among them. */
export const ENGINE_FOLDER = join(ROOT, ".cache", "ngspice");

export const HOW_TO_GET_ONE =
  "Checks against ngspice need the program: install it so that it is on the PATH " +
  "(Debian and its kin: apt-get install ngspice), or set PINTRUTH_NGSPICE to it.";

/** `PINTRUTH_NGSPICE` if set, else the one on the PATH, else undefined. */
export const ngspiceProgram = () => process.env.PINTRUTH_NGSPICE || programOnPath(["ngspice"]);

/**
 * The module of the engine for JavaScript, as a URL to import; undefined when it was not fetched.
 *
 * @returns {string | undefined}
 */
export function ngspiceEngine() {
  const module = join(ENGINE_FOLDER, "node_modules", ENGINE.name, "dist", "eecircuit-engine.mjs");
  return existsSync(module) ? pathToFileURL(module).href : undefined;
}
