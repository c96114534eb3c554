import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { HOW_TO_GET_ONE, ngspiceProgram } from "../../scripts/support/ngspice.mjs";
import { follow, netlistOf, setUp, wire } from "../../src/circuit/index.ts";
import type { Job } from "../../src/job/index.ts";
import { afterOneSwitch, working, workingMachine } from "../support/working-machine.ts";
import { type Bench, type Grid, median, times } from "./harness.ts";

const SIZES = [200, 2_000, 10_000, 50_000] as const;
/** Longer than this is not waited for. */
const LONGEST_S = 120;
const SWITCHES = 12;

const ms = (value: number) => `${value < 10 ? value.toFixed(2) : value.toFixed(0)} ms`;

/**
 * What ngspice takes for a deck: its whole run, process and all, and the same where it prints its
 * table of every device instead of writing its results to a file.
 */
function spiceOf(deck: string, runs: number) {
  const program = ngspiceProgram();
  if (!program) return null;
  const folder = mkdtempSync(join(tmpdir(), "pintruth-bench-"));
  const [path, raw] = [join(folder, "deck.cir"), join(folder, "deck.raw")];
  writeFileSync(path, deck);
  const printed: number[] = [];
  const kept: number[] = [];
  let memory = 0;
  const run = (args: readonly string[], taken: number[]) => {
    const began = performance.now();
    const options = { encoding: "utf8", timeout: LONGEST_S * 1000, maxBuffer: 1e9 } as const;
    const { stdout } = spawnSync(program, [...args, path], options);
    taken.push(performance.now() - began);
    return stdout;
  };
  for (let n = 0; n < runs; n++) {
    run(["-b"], printed);
    const said = run(["-b", "-r", raw], kept);
    memory = Number(/Maximum ngspice program size =\s*([\d.]+) MB/.exec(said)?.[1] ?? 0);
    if ((kept[0] ?? 0) > 20_000) break;
  }
  const volts = existsSync(raw) ? readRaw(readFileSync(raw)) : null;
  rmSync(folder, { recursive: true, force: true });
  return { time: median(kept), printing: median(printed), memory, volts };
}

/** Node voltages of a raw file in its binary form. */
function readRaw(raw: Buffer): ReadonlyMap<string, number> {
  const mark = Buffer.from("Binary:\n");
  const start = raw.indexOf(mark);
  const head = raw.toString("utf8", 0, start);
  const volts = new Map<string, number>();
  for (const [, index, name] of head.matchAll(/^\t(\d+)\tv\((\S+)\)\t/gm)) {
    volts.set(name ?? "", raw.readDoubleLE(start + mark.length + 8 * Number(index)));
  }
  return volts;
}

/** The most memory that a process needed which does nothing but solve the machine once, MB. */
function peakOf(wires: number): number {
  const bundle = fileURLToPath(import.meta.url);
  const code = `(await import(${JSON.stringify(bundle)})).solveAlone(${wires})`;
  const out = execFileSync(process.execPath, ["--input-type=module", "-e", code], {
    encoding: "utf8",
  });
  return Number(out) / 1e3;
}

/** For a process of its own: solves one machine and prints the most memory that took, kB. */
export function solveAlone(wires: number): void {
  const job = workingMachine(wires);
  setUp(job, null, working(job));
  process.stdout.write(String(process.resourceUsage().maxRSS));
}

function lineOf(wires: number): string[] {
  const text = JSON.stringify(workingMachine(wires));
  const parsed = (): Job => JSON.parse(text);
  const runs = wires > 5_000 ? 5 : 15;
  const full = median(times((job) => setUp(job, null, working(job)), parsed, { runs, warmUp: 2 }));

  const job = parsed();
  const when = working(job);
  const netlist = netlistOf(job, null, when);
  if (netlist.bench.settled.oscillating.length > 0) throw new Error("the machine never rests");
  let stands = netlist.bench.settled;
  let turn = 0;
  const again = median(
    times(
      (state) => {
        stands = follow(wire(job, null, state), [], stands);
      },
      () => afterOneSwitch(job, when, ++turn),
      { runs: SWITCHES, warmUp: 3 },
    ),
  );
  const spice = spiceOf(netlist.text, wires > 5_000 ? 3 : 7);
  const { volts } = netlist.bench.settled.point;
  let apart = 0;
  for (const [node, name] of netlist.nameOf) {
    const theirs = name === "0" ? 0 : (spice?.volts?.get(name) ?? Number.NaN);
    apart = Math.max(apart, Math.abs((volts[node] as number) - theirs));
  }
  const found = spice?.volts
    ? `${ms(spice.time)} (${ms(spice.printing)})`
    : spice
      ? `none in ${LONGEST_S} s`
      : "absent";
  const against = (own: number) => (spice?.volts ? `${(spice.time / own).toPrecision(2)} ×` : "");
  return [
    wires.toLocaleString("en"),
    netlist.nameOf.size.toLocaleString("en"),
    found,
    ms(full),
    against(full),
    ms(again),
    against(again),
    spice ? `${spice.memory.toFixed(0)} MB` : "",
    `${peakOf(wires).toFixed(0)} MB`,
    spice?.volts ? `${(apart * 1e3).toPrecision(2)} mV` : "",
  ];
}

const bench: Bench = {
  title: "Solving a whole machine, beside ngspice",
  about:
    "Every wire has its size and length; fuses, relays, modules, lamps, LEDs and diodes all have a " +
    "job to do. Full: a job just parsed, nothing known of it. Again: the machine goes " +
    "on from where it stands after one switch was turned and another turned back. ngspice: its whole run, `ngspice -b -r FILE`, on the deck that " +
    "`pintruth netlist` writes of that state, relays and modules already pinned in it (in brackets " +
    "`ngspice -b`, which prints a table of every device). Times are " +
    `medians, memory is the most that a whole process took, Node and all. ${ngspiceProgram() ? "" : HOW_TO_GET_ONE}`.trim(),
  async run(): Promise<Grid> {
    return {
      columns: [
        ...["wires", "nodes", "ngspice", "full", "ngspice ÷ full", "again", "ngspice ÷ again"],
        ...["memory: ngspice", "memory: ours", "largest difference"],
      ],
      lines: SIZES.map(lineOf),
    };
  },
};

export default bench;
