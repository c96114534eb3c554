// Makes everything in sample-data: node scripts/samples/make.mjs [folder]
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

/** @param {string} path */
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const { module } = await runnerImport(here("./make.ts"), { configFile: false });
const folder = process.argv[2] ?? here("../../sample-data");
for (const line of module.makeSamples(folder)) console.log(line);
