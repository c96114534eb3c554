// npm test: sets up what the checks need, runs them all, and closes with "N passed, N failed".
// One stage failing does not keep the next from running.
import "./support/node-version.mjs";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { APP, CLI, ensureBuilt } from "./support/bundle.mjs";
import {
  closingLine,
  oneCheck,
  playwrightCounts,
  total,
  trusted,
  vitestCounts,
} from "./support/counts.mjs";
import { ensureBrowser } from "./support/ensure-browser.mjs";
import { ensureNgspice } from "./support/ensure-ngspice.mjs";
import { ensureInstalled } from "./support/install.mjs";
import { ROOT, say } from "./support/project.mjs";
import { runNode } from "./support/run.mjs";
import { compiles, typeConfigs } from "./support/type-check.mjs";

/** @typedef {import("./support/counts.mjs").Counts} Counts */

const REPORTS = join(ROOT, ".cache", "reports");

/** @param {string} name @returns {any} null when the runner wrote none */
function readReport(name) {
  try {
    return JSON.parse(readFileSync(join(REPORTS, name), "utf8"));
  } catch {
    return null;
  }
}

/** @param {readonly string[]} args */
const passes = async (args) => (await runNode(args, { stdout: "inherit" })) === 0;

async function lint() {
  return total([
    oneCheck(
      "lint: biome",
      await passes(["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."]),
    ),
    oneCheck("lint: licences", await passes(["scripts/licences.mjs"])),
  ]);
}

async function types() {
  const checks = [];
  for (const config of typeConfigs()) {
    checks.push(oneCheck(`types: ${config}`, await compiles(config)));
  }
  return total(checks);
}

const CI_SEED = "20261126";

async function unit() {
  // where nobody looks on, the same tests are the same tests; everywhere else each run draws anew
  if (process.env.CI) process.env.PINTRUTH_SEED ??= CI_SEED;
  // its tests skip themselves aloud where there is none
  await ensureNgspice();
  const outputs = ["--reporter=default", "--reporter=json"];
  const file = `--outputFile.json=${join(REPORTS, "unit.json")}`;
  const args = ["node_modules/vitest/vitest.mjs", "run", ...outputs, file];
  const status = await runNode(args, { stdout: "inherit" });
  const report = readReport("unit.json");
  return trusted("unit tests", report && vitestCounts(report), status);
}

async function browser() {
  if (!(await ensureBrowser())) return oneCheck("browser tests: there is no browser", false);
  const args = ["node_modules/@playwright/test/cli.js", "test", "--reporter=list,json"];
  const status = await runNode(args, {
    stdout: "inherit",
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: join(REPORTS, "browser.json") },
  });
  const report = readReport("browser.json");
  return trusted("browser tests", report && playwrightCounts(report), status);
}

/** @type {readonly (readonly [name: string, run: () => Promise<Counts>])[]} */
const STAGES = [
  ["lint", lint],
  ["types", types],
  ["unit, property and reference tests", unit],
  ["browser tests", browser],
];

/** @param {readonly Counts[]} all */
function finish(all) {
  const sum = total(all);
  if (sum.skips.length > 0) console.log("\nSkipped:");
  for (const name of sum.skips) console.log(`  - ${name}`);
  if (sum.failures.length > 0) console.log("\nFailed:");
  for (const name of sum.failures) console.log(`  - ${name}`);
  console.log(`\n${closingLine(sum)}`);
  process.exit(sum.failed > 0 ? 1 : 0);
}

rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });

if (!(await ensureInstalled())) finish([oneCheck("set-up: installing packages", false)]);
const results = [
  oneCheck("build: the app", await ensureBuilt(APP)),
  oneCheck("build: the command line", await ensureBuilt(CLI)),
];
for (const [name, stage] of STAGES) {
  const began = Date.now();
  say(`\n== ${name}`);
  const counts = await stage();
  console.log(`== ${name}: ${closingLine(counts)} (${Math.round((Date.now() - began) / 1000)} s)`);
  results.push(counts);
}
finish(results);
