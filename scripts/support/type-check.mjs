import { readdirSync } from "node:fs";
import { ROOT } from "./project.mjs";
import { runNode } from "./run.mjs";

/** `tsconfig.json`, `tsconfig.core.json`, ...: each says at its top what it guards. */
export const typeConfigs = () =>
  readdirSync(ROOT)
    .filter((name) => /^tsconfig.*\.json$/.test(name))
    .sort();

/** @param {string} config file name @returns {Promise<boolean>} whether it compiles */
export const compiles = async (config) =>
  (await runNode(["node_modules/typescript/bin/tsc", "-p", config])) === 0;
