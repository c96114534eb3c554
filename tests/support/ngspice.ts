/** Running decks through ngspice: the program where there is one, else its engine for JavaScript. */
import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { HOW_TO_GET_ONE, ngspiceEngine, ngspiceProgram } from "../../scripts/support/ngspice.mjs";

export interface Spice {
  /** Volts by node name, of the deck's operating point. Throws where it finds none. */
  volts(deck: string): Promise<ReadonlyMap<string, number>>;
  close(): void;
}

/** Null, said aloud, where neither can be had. */
export async function openSpice(): Promise<Spice | null> {
  const program = ngspiceProgram();
  if (program) return fromProgram(program);
  const engine = ngspiceEngine();
  if (engine) return fromEngine(engine);
  console.warn(`SKIPPED: there is no ngspice. ${HOW_TO_GET_ONE}`);
  return null;
}

const run = promisify(execFile);
const LONGEST_MS = 60_000;

function fromProgram(program: string): Spice {
  const folder = mkdtempSync(join(tmpdir(), "pintruth-spice-"));
  let count = 0;
  return {
    async volts(deck) {
      const path = join(folder, `${++count}`);
      await writeFile(`${path}.cir`, deck);
      const { stdout, stderr } = await run(program, ["-b", "-r", `${path}.raw`, `${path}.cir`], {
        env: { ...process.env, SPICE_ASCIIRAWFILE: "1" },
        timeout: LONGEST_MS,
      }).catch((error: { stdout?: string; stderr?: string }) => error);
      const raw = await readFile(`${path}.raw`, "utf8").catch(() => "");
      const volts = readRaw(raw);
      await Promise.all([rm(`${path}.cir`), rm(`${path}.raw`, { force: true })]);
      if (volts.size === 0) throw new Error(`ngspice finds nothing:\n${stdout}\n${stderr}`);
      return volts;
    },
    close: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** `v(k1_87)`: how both name a node's voltage. */
const nodeOf = (variable: string): string | null => /^v\((.*)\)$/i.exec(variable)?.[1] ?? null;

/** The one point of an operating point's raw file in its text form. */
function readRaw(raw: string): Map<string, number> {
  const [head = "", values = ""] = raw.split(/^Values:$/m);
  const names = [...head.matchAll(/^\t\d+\t(\S+)\t/gm)].map(([, name = ""]) => name);
  const numbers = values.trim().split(/\s+/).slice(1).map(Number);
  const volts = new Map<string, number>();
  names.forEach((name, index) => {
    const node = nodeOf(name);
    const value = numbers[index];
    if (node !== null && value !== undefined) volts.set(node, value);
  });
  return volts;
}

/** What we use of the engine's class. */
interface Simulation {
  start(): Promise<unknown>;
  setNetList(deck: string): void;
  runSim(): Promise<{ data: readonly { name: string; values: readonly unknown[] }[] }>;
  getError(): readonly string[];
}

/** The engine goes silent where it finds nothing: one deck takes it some milliseconds. */
const SILENT_MS = 5000;

async function fromEngine(url: string): Promise<Spice> {
  const module: { Simulation: new () => Simulation } = await import(url);
  const start = async () => {
    const simulation = new module.Simulation();
    await simulation.start();
    return simulation;
  };
  let simulation = await start();
  let before: Promise<unknown> = Promise.resolve();
  let count = 0;
  const solve = async (deck: string) => {
    // what it finds nothing for, it answers with what it found before: each deck has its own mark
    const mark = ++count;
    const marked = deck.replace(/^\.op$/m, `Vmark mark 0 ${mark}\n.op`);
    // its reader of results stumbles over a title that is not plain
    simulation.setNetList(marked.replace(/^.*/, "deck"));
    const result = await Promise.race([simulation.runSim(), silence()]);
    const marks = result?.data.find(({ name }) => name === "v(mark)")?.values;
    if (result === null || marks?.[0] !== mark) {
      const said = simulation.getError().join("\n");
      simulation = await start();
      throw new Error(`ngspice finds nothing:\n${said}`);
    }
    const volts = new Map<string, number>();
    for (const { name, values } of result.data) {
      const node = nodeOf(name);
      const [value] = values;
      if (node !== null && node !== "mark" && typeof value === "number") volts.set(node, value);
    }
    return volts;
  };
  return {
    // one deck after another: it has room for one
    volts(deck) {
      const turn = before.catch(() => null).then(() => solve(deck));
      before = turn;
      return turn;
    },
    close() {},
  };
}

const silence = () =>
  new Promise<null>((resolve) => setTimeout(() => resolve(null), SILENT_MS).unref());
