/**
 * A job as large as one likes that still makes electrical sense: one battery and key, fused groups
 * of ten modules, and round each module the same twenty wires. Each module has an eight-way plug,
 * or some have one of 24 ways, with as many pins, and the others none. For benchmarks; no two calls
 * differ.
 */
import {
  type Control,
  cavityRef,
  type Id,
  type Job,
  newJob,
  type Part,
  type PinRef,
  pinRef,
} from "../../src/job/index.ts";

const SHEET = "sheet1";
/** An A3 page scanned at 300 dots an inch. */
export const SCAN = { width: 4961, height: 3508 } as const;
const MODULES_PER_GROUP = 10;
const WIRES_PER_GROUP = 191;
const WORDS = ["PWR", "GND", "SW", "IN", "LAMP", "SOL", "OUT", "SIG"];
/** A large plug's further pins, a lamp's and a switch's in turn, with two wires each. */
const MORE_WORDS = Array.from({ length: 8 }, () => ["LAMP", "IN"]).flat();
const WIRES_OF_MORE = 2 * MORE_WORDS.length;

/** `plugs`: how many modules have a plug of 24 ways; absent: every module has one of eight. */
export function bigJob(wires: number, plugs?: number): Job {
  const job = newJob(`${wires} wires`, 24);
  job.diagram.sheets.push({ id: SHEET, title: "Sheet 1" });
  const builder = new Builder(job);
  builder.part({ id: "G1", kind: "battery" }, [60, 60]);
  builder.part({ id: "S1", kind: "switch", ...operated("key") }, [160, 60]);
  builder.part({ id: "E1", kind: "ground" }, [60, 160]);
  builder.wire("G1:-", "E1:1");
  builder.wire("G1:+", "S1:1");
  const plain = wires - 2 - WIRES_OF_MORE * (plugs ?? 0);
  const modules = Math.max(1, Math.floor((plain / WIRES_PER_GROUP) * MODULES_PER_GROUP));
  const every = plugs === undefined ? 0 : Math.floor(modules / plugs);
  const columns = Math.ceil(Math.sqrt((modules * SCAN.width) / SCAN.height));
  const pitch = SCAN.width / columns;
  for (let n = 0; n < modules; n++) {
    const at: [number, number] = [
      (n % columns) * pitch + 60,
      Math.floor(n / columns) * pitch + 240,
    ];
    const module = addModule(builder, n, at, pitch);
    if (plugs === undefined) addPlug(job, module);
    else if (n % every === 0 && job.plugs.length < plugs)
      addLargePlug(builder, module, n, at, pitch);
  }
  // The rest are spare strands to the frame, so that the count is the one asked for.
  while (job.diagram.wires.length < wires) builder.wire("G1:-", "E1:1");
  return job;
}

const operated = (control: Control) => ({
  control,
  positions: ["off", "on"],
  contacts: [{ between: ["1", "2"] as [string, string], closedIn: ["on"] }],
});

type Unplaced = Part extends infer P
  ? P extends Part
    ? Omit<P, "sheet" | "at" | "turn" | "unit">
    : never
  : never;

class Builder {
  readonly job: Job;

  constructor(job: Job) {
    this.job = job;
  }

  part(fields: Unplaced, at: [number, number]): void {
    this.job.diagram.parts.push({ ...fields, sheet: SHEET, at, turn: 0, unit: 3 } as Part);
  }

  wire(from: PinRef, to: PinRef): void {
    const id = `W${this.job.diagram.wires.length + 1}`;
    this.job.diagram.wires.push({ id, from, to, colour: { base: "BK", tracer: "WH" } });
  }
}

/** The module's id. */
function addModule(builder: Builder, n: number, [x, y]: [number, number], pitch: number): Id {
  const id = (letter: string, index = 0): Id => `${letter}${n * 4 + index + 10}`;
  const place = (column: number, row: number): [number, number] => [
    x + (column * pitch) / 5,
    y + (row * pitch) / 6,
  ];
  const module = id("A");
  const first = n - (n % MODULES_PER_GROUP);
  const feed = `XS${first}`;
  const keyed = `XK${first}`;
  if (n === first) {
    builder.part({ id: feed, kind: "splice" }, place(0, 0));
    builder.part({ id: keyed, kind: "splice" }, place(1, 0));
    builder.wire("S1:1", `${feed}:1`);
    builder.wire("S1:2", `${keyed}:1`);
  }
  const pins = WORDS.map((_, index) => ({
    id: String(index + 1),
    // Every seventh module has its words shifted by one.
    printed: WORDS[(index + (n % 7 === 6 ? 1 : 0)) % WORDS.length] ?? "",
  }));
  builder.part({ id: module, kind: "module", pins, size: [pitch / 6, pitch / 2] }, place(2, 2));
  builder.part({ id: id("F"), kind: "fuse", amps: 10 }, place(1, 1));
  builder.part({ id: id("F", 1), kind: "fuse", amps: 5 }, place(2, 1));
  builder.part({ id: id("S"), kind: "switch", ...operated("operator") }, place(3, 1));
  builder.part({ id: id("S", 1), kind: "switch", ...operated("limit") }, place(1, 3));
  builder.part({ id: id("P"), kind: "lamp", watts: 21 }, place(3, 2));
  builder.part({ id: id("M"), kind: "solenoid", ohms: 24 }, place(3, 3));
  builder.part({ id: id("K"), kind: "relay", coilOhms: 300 }, place(3, 4));
  builder.part({ id: id("M", 1), kind: "motor", ohms: 2 }, place(4, 4));
  builder.part({ id: id("XG"), kind: "splice" }, place(2, 4));
  builder.part({ id: id("E"), kind: "ground" }, place(2, 5));

  const ground = `${id("XG")}:1`;
  const joins: [PinRef, PinRef][] = [
    [`${feed}:1`, `${id("F")}:1`],
    [`${id("F")}:2`, `${module}:1`],
    [`${module}:2`, ground],
    [ground, `${id("E")}:1`],
    [`${keyed}:1`, `${id("F", 1)}:1`],
    [`${id("F", 1)}:2`, `${id("S")}:1`],
    [`${id("S")}:2`, `${module}:3`],
    [`${module}:4`, `${id("S", 1)}:1`],
    [`${id("S", 1)}:2`, ground],
    [`${module}:5`, `${id("P")}:1`],
    [`${id("P")}:2`, ground],
    [`${module}:6`, `${id("M")}:1`],
    [`${id("M")}:2`, ground],
    [`${module}:7`, `${id("K")}:86`],
    [`${id("K")}:85`, ground],
    [`${id("F")}:2`, `${id("K")}:30`],
    [`${id("K")}:87`, `${id("M", 1)}:1`],
    [`${id("M", 1)}:2`, ground],
  ];
  for (const [from, to] of joins) builder.wire(from, to);
  // The data line goes from each module to the next of its group.
  if (n !== first) builder.wire(`${module}:8`, `A${(n - 1) * 4 + 10}:8`);
  return module;
}

/** Sixteen pins more, lamps and switches in turn, and the plug to them all. */
function addLargePlug(
  builder: Builder,
  module: Id,
  n: number,
  [x, y]: [number, number],
  pitch: number,
): void {
  const part = builder.job.diagram.parts.find(({ id }) => id === module);
  if (part?.kind !== "module") throw new Error(`no module ${module}`);
  const ground = `XG${n * 4 + 10}:1`;
  MORE_WORDS.forEach((printed, index) => {
    const pin = String(WORDS.length + index + 1);
    const at: [number, number] = [x + (index * pitch) / 18, y + (pitch * 11) / 12];
    const load = printed === "LAMP" ? `PX${n}-${index}` : `SX${n}-${index}`;
    if (printed === "LAMP") builder.part({ id: load, kind: "lamp", watts: 5 }, at);
    else builder.part({ id: load, kind: "switch", ...operated("limit") }, at);
    part.pins.push({ id: pin, printed });
    builder.wire(`${module}:${pin}`, `${load}:1`);
    builder.wire(`${load}:2`, ground);
  });
  addPlug(builder.job, module, WORDS.length + MORE_WORDS.length);
}

/** A plug of two rows or more whose cavities are tied to the module's pins one to one. */
function addPlug(job: Job, module: Id, ways = WORDS.length): void {
  const plug = `X${module}`;
  const columns = Math.ceil(ways / 2);
  job.plugs.push({
    id: plug,
    side: "wire",
    cavities: Array.from({ length: ways }, (_, index) => ({
      mark: String(index + 1),
      at: [(index % columns) * 6, Math.floor(index / columns) * 6],
    })),
  });
  for (let index = 1; index <= ways; index++) {
    job.links.push({
      pin: pinRef(module, String(index)),
      cavity: cavityRef(plug, String(index)),
    });
  }
}
