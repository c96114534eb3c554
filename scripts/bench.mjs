// npm run bench [-- NAME...]: runs tests/bench/NAME.bench.ts and prints their tables; all of them,
// and into docs/bench.md too, when no name is given.
import "./support/node-version.mjs";
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, cpus } from "node:os";
import { join } from "node:path";
import { APP, ensureBuilt } from "./support/bundle.mjs";
import { ensureInstalled } from "./support/install.mjs";
import { ROOT, say } from "./support/project.mjs";
import { runNode } from "./support/run.mjs";

/**
 * @typedef {{ what: string, median: number, against?: string, ratio?: number, note?: string }} Row
 * @typedef {{ columns: string[], lines: string[][] }} Grid
 * @typedef {{ title: string, about: string, rows: Row[] | Grid | Grid[] }} Result
 */

const FOLDER = "tests/bench";
const WORK = ".cache/bench";

/** @param {string} name @returns {Promise<Result>} */
async function measure(name) {
  say(`Measuring ${name} ...`);
  const { build } = await import("vite");
  await build({
    root: ROOT,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    build: {
      ssr: `${FOLDER}/${name}.bench.ts`,
      outDir: WORK,
      emptyOutDir: false,
      target: "node20",
      minify: false,
      rolldownOptions: { output: { entryFileNames: `${name}.js` } },
    },
  });
  const out = `${WORK}/${name}.json`;
  const args = [
    "--expose-gc",
    "scripts/support/run-bench.mjs",
    join(ROOT, WORK, `${name}.js`),
    out,
  ];
  const status = await runNode(args);
  if (status !== 0) throw new Error(`${name} failed: see its message above`);
  return JSON.parse(readFileSync(join(ROOT, out), "utf8"));
}

/** @param {number} ms */
const milliseconds = (ms) => `${ms < 10 ? ms.toFixed(2) : ms.toFixed(0)} ms`;

/** @param {readonly string[]} cells */
const line = (cells) => `| ${cells.join(" | ")} |`;

/** @param {Result["rows"]} rows @returns {rows is Grid[]} */
const areGrids = (rows) => Array.isArray(rows) && rows.some((row) => "columns" in row);

/** @param {Grid} grid */
const gridLines = ({ columns, lines }) => [columns, columns.map(() => "---"), ...lines].map(line);

/** @param {Result} result */
function table({ title, about, rows }) {
  if (!Array.isArray(rows) || areGrids(rows)) {
    const grids = Array.isArray(rows) ? rows : [rows];
    const all = grids.flatMap((grid) => [...gridLines(grid), ""]);
    return [`## ${title}`, "", about, "", ...all].join("\n");
  }
  const lines = rows.map(({ what, median, against, ratio, note }) => {
    const held = against === undefined ? "the reference" : `${ratio?.toFixed(2)} × ${against}`;
    return `| ${what} | ${milliseconds(median)} | ${held} | ${note ?? ""} |`;
  });
  const head = ["| what | median | against | beside it |", "| --- | --- | --- | --- |"];
  return [`## ${title}`, "", about, "", ...head, ...lines, ""].join("\n");
}

if (!(await ensureInstalled()) || !(await ensureBuilt(APP))) process.exit(1);
const all = readdirSync(join(ROOT, FOLDER))
  .filter((file) => file.endsWith(".bench.ts"))
  .map((file) => file.replace(".bench.ts", ""))
  .sort();
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  say(`no such benchmark: ${unknown.join(", ")} (there are ${all.join(", ")})`);
  process.exit(2);
}

rmSync(join(ROOT, WORK), { recursive: true, force: true });
mkdirSync(join(ROOT, WORK), { recursive: true });
const tables = [];
for (const name of asked.length > 0 ? asked : all) tables.push(table(await measure(name)));
console.log(`\n${tables.join("\n")}`);
if (asked.length === 0) {
  const model = cpus()[0]?.model.trim() ?? "unknown processor";
  const page = `# Measurements

Made by \`npm run bench\` on ${new Date().toISOString().slice(0, 10)} with Node ${process.versions.node} on ${availableParallelism()} cores (${model}).
Times are the middle one of several runs. Compare the ratios, not the milliseconds: each is against
work done in the same process on the same data. Nothing here is a test, and nothing fails for being
slow.

${tables.join("\n")}`;
  writeFileSync(join(ROOT, "docs", "bench.md"), page);
  say("Written to docs/bench.md");
}
