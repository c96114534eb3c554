import { mkdirSync } from "node:fs";
import { programOnPath } from "./browser.mjs";
import {
  ENGINE,
  ENGINE_FOLDER,
  HOW_TO_GET_ONE,
  ngspiceEngine,
  ngspiceProgram,
} from "./ngspice.mjs";
import { say } from "./project.mjs";
import { run } from "./run.mjs";

/**
 * Finds or gets ngspice for the tests that hold our solver against it: the program on the PATH,
 * else the system's package where this user may install it, else the engine for JavaScript.
 *
 * @returns {Promise<boolean>} false when there is none; those tests are then skipped, and how to
 *   get one is on stderr
 */
export async function ensureNgspice() {
  if (ngspiceProgram() || (await fromSystemPackages())) return true;
  if (ngspiceEngine() || (await fromPackages())) return true;
  say(`SKIPPED: there is no ngspice. ${HOW_TO_GET_ONE}`);
  return false;
}

/** Debian and its kin, for root only: anyone else would be asked for a password. */
async function fromSystemPackages() {
  if (process.getuid?.() !== 0 || !programOnPath(["apt-get"])) return false;
  say("Installing ngspice ...");
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  const install = () =>
    run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "ngspice"], {
      env,
      seconds: 180,
    });
  // lists that are there already save the time of fetching them
  if ((await install()) !== 0) {
    await run("apt-get", ["update", "-qq"], { env, seconds: 120 });
    await install();
  }
  return ngspiceProgram() !== undefined;
}

async function fromPackages() {
  say("Fetching ngspice for JavaScript ...");
  mkdirSync(ENGINE_FOLDER, { recursive: true });
  const what = `${ENGINE.name}@${ENGINE.version}`;
  const where = ["--prefix", ENGINE_FOLDER];
  const quiet = ["--no-save", "--no-audit", "--no-fund", "--ignore-scripts", "--loglevel=error"];
  const status = await run("npm", ["install", what, ...where, ...quiet], { seconds: 180 });
  return status === 0 && ngspiceEngine() !== undefined;
}
