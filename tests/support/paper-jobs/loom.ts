/** Parts and wires of a believable machine: sizes that suit their fuses, colours, numbers, joints. */
import type { Random } from "../../../src/base/index.ts";
import type { Colour, Job, Part, PartKindName, PinRef } from "../../../src/job/index.ts";
import type { FreeLoad } from "./paper-job.ts";

/** Somewhere to take current from, or to bring it back to, with the size its wires must have. */
export interface Line {
  readonly pin: PinRef;
  readonly mm2: number;
}

const COLOURS = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK"] as const;

/** Fuses with wires that carry them under any of the usual tables (common practice, no source). */
const SIZE_OF_FUSE: readonly (readonly [amps: number, mm2: number])[] = [
  [5, 1.5],
  [7.5, 2.5],
  [10, 2.5],
];

export class Loom {
  readonly job: Job;
  readonly random: Random;
  main: Line = { pin: "", mm2: 25 };
  key: Line = { pin: "", mm2: 6 };
  /** The key's start position, where it has one. */
  start: Line | null = null;
  private readonly counts = new Map<string, number>();

  constructor(random: Random) {
    this.random = random;
    this.job = {
      format: "pintruth-job",
      version: 1,
      title: "Made for the judge",
      systemVoltage: random.pick([12, 24, 24]),
      diagram: { sheets: [{ id: "sheet1" }], parts: [], wires: [] },
      plugs: [],
      links: [],
      machines: [],
    };
  }

  get volts(): number {
    return this.job.systemVoltage;
  }

  id(letter: string): string {
    const count = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, count);
    return `${letter}${count}`;
  }

  /** `fields`: those of the kind; that they are is checked by reading the whole job. */
  part(kind: PartKindName, letter: string, fields: object = {}): string {
    const id = this.id(letter);
    const at: [number, number] = [this.random.below(4000), this.random.below(3000)];
    this.job.diagram.parts.push({ kind, id, sheet: "sheet1", at, turn: 0, ...fields } as Part);
    return id;
  }

  /** One wire; its id. */
  wire(from: PinRef, to: PinRef, mm2: number, colour: Colour = this.colour()): string {
    const { random } = this;
    const id = this.id("W");
    this.job.diagram.wires.push({
      id,
      from,
      to,
      ...(random.chance(0.8) ? { colour } : {}),
      ...(random.chance(0.5) ? { number: String(100 + random.below(900)) } : {}),
      ...(random.chance(0.7)
        ? { mm2, metres: mm2 >= 16 ? 0.5 + random.below(2) : 0.5 + random.below(8) / 2 }
        : {}),
    });
    return id;
  }

  /** A wire, by way of whatever a loom may have on the way that changes nothing; its last piece's id. */
  run(from: PinRef, to: PinRef, mm2: number): string {
    const colour = this.colour();
    switch (this.random.below(8)) {
      case 0: {
        const splice = this.part("splice", "SP");
        this.wire(from, `${splice}:1`, mm2, colour);
        return this.wire(`${splice}:1`, to, mm2);
      }
      case 1: {
        const plug = this.part("inline", "XI", { pins: [{ id: "1" }, { id: "2" }] });
        const pin = this.random.pick(["1", "2"]);
        this.wire(from, `${plug}:${pin}`, mm2, colour);
        return this.wire(`${plug}:${pin}`, to, mm2);
      }
      case 2: {
        const label = this.id("sheet 2, line ");
        const here = this.part("offpage", "XP", { label });
        const there = this.part("offpage", "XP", { label: ` ${label.toUpperCase()}` });
        this.wire(from, `${here}:1`, mm2, colour);
        return this.wire(`${there}:1`, to, mm2, colour);
      }
      default:
        return this.wire(from, to, mm2, colour);
    }
  }

  colour(): Colour {
    const base = this.random.pick(COLOURS);
    const tracer = this.random.pick(COLOURS);
    return tracer === base || this.random.chance(0.5) ? { base } : { base, tracer };
  }

  /** A new fuse on a line. */
  fused(from: Line): Line & { readonly fuse: string } {
    const [amps, mm2] = this.random.pick(SIZE_OF_FUSE);
    const kind = this.random.chance(0.9) ? "fuse" : "breaker";
    const fuse = this.part(kind, kind === "fuse" ? "F" : "Q", { amps });
    this.run(from.pin, `${fuse}:1`, from.mm2);
    return { pin: `${fuse}:2`, mm2, fuse };
  }

  /** A fused feed that is always live, or live with the key. */
  feed(): Line & { readonly fuse: string } {
    return this.fused(this.random.chance(0.5) ? this.main : this.key);
  }

  ground(): PinRef {
    const place = this.random.pick(["", "", "frame", "Frame ", "engine"]);
    const id = this.part("ground", "XE", place === "" ? {} : { place });
    return `${id}:1`;
  }

  /** A switch with one contact on a line, closed when worked, or open when worked. */
  contact(control: string, line: Line, fields: object = {}): Line {
    const closedIn = [this.random.pick(["rest", "rest", "worked", "worked", "worked"])];
    const id = this.part("switch", "S", {
      control,
      positions: ["rest", "worked"],
      rest: "rest",
      contacts: [{ between: ["1", "2"], closedIn }],
      ...fields,
    });
    this.run(line.pin, `${id}:1`, line.mm2);
    return { pin: `${id}:2`, mm2: line.mm2 };
  }

  /** Battery, main fuse, key, grounds and the straps between their places; a lamp on the key's bus. */
  supply(): FreeLoad {
    const { random, volts } = this;
    const battery = this.part("battery", "G", random.chance(0.5) ? { ohms: 0.01 } : {});
    const minus = this.part("ground", "XE");
    this.wire(`${battery}:-`, `${minus}:1`, 25);
    const engine = this.part("ground", "XE", { place: "engine" });
    const frame = this.part("ground", "XE");
    this.wire(`${engine}:1`, `${frame}:1`, 25);

    let plus = `${battery}:+`;
    const fuse = this.part("fuse", "F", { amps: 50 });
    this.wire(plus, `${fuse}:1`, 25);
    plus = `${fuse}:2`;
    if (random.chance(0.3)) {
      const isolator = this.part("switch", "S", {
        control: "isolator",
        positions: ["off", "on"],
        rest: "on",
        contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
      });
      this.wire(plus, `${isolator}:1`, 25);
      plus = `${isolator}:2`;
    }
    const splice = this.part("splice", "SP");
    this.wire(plus, `${splice}:1`, 25);
    this.main = { pin: `${splice}:1`, mm2: 25 };

    const keyFuse = this.part("fuse", "F", { amps: 15 });
    this.wire(this.main.pin, `${keyFuse}:1`, 25);
    let line: Line = { pin: `${keyFuse}:2`, mm2: 6 };
    if (random.chance(0.3))
      line = this.contact("emergency-stop", line, {
        contacts: [{ between: ["1", "2"], closedIn: ["rest"] }],
      });
    const hasStart = random.chance(0.5);
    const key = this.part("switch", "S", {
      label: "Key",
      control: "key",
      positions: hasStart ? ["off", "run", "start"] : ["off", "run"],
      rest: "off",
      ...(hasStart ? { springReturn: ["start"] } : {}),
      contacts: [
        { between: ["30", "15"], closedIn: hasStart ? ["run", "start"] : ["run"] },
        ...(hasStart ? [{ between: ["30", "50"], closedIn: ["start"] }] : []),
      ],
    });
    this.run(line.pin, `${key}:30`, line.mm2);
    const bus = this.part("splice", "SP");
    this.wire(`${key}:15`, `${bus}:1`, 6);
    this.key = { pin: `${bus}:1`, mm2: 6 };
    if (hasStart) {
      const relay = this.part("relay", "K", { coilOhms: volts === 12 ? 80 : 320 });
      const start = this.part("splice", "SP");
      this.wire(`${key}:50`, `${start}:1`, 6);
      this.start = { pin: `${start}:1`, mm2: 6 };
      this.run(this.start.pin, `${relay}:86`, 6);
      this.run(`${relay}:85`, this.ground(), 6);
      this.load(this.fused(this.main), `${relay}:30`);
      this.run(`${relay}:87`, this.ground(), 2.5);
    }
    return this.freeLamp(this.key);
  }

  /** A warning lamp that no module has to do with. */
  freeLamp(bus: Line): FreeLoad {
    const feed = this.fused(bus);
    const part = this.part("lamp", "P", { watts: this.random.pick([5, 10]) });
    const feedWire = this.wire(feed.pin, `${part}:1`, feed.mm2);
    const returnWire = this.wire(`${part}:2`, this.ground(), feed.mm2);
    return { part, fuse: feed.fuse, isKeyed: bus === this.key, feedWire, returnWire };
  }

  /** Something that works, between two lines; its id. Its current stays below every fuse here. */
  load(from: Line, to: PinRef, kinds: readonly LoadKind[] = LOADS): string {
    const kind = this.random.pick(kinds);
    const id = this.part(kind === "led" ? "lamp" : kind, LETTERS[kind], this.fieldsOf(kind));
    this.run(from.pin, `${id}:1`, from.mm2);
    this.run(`${id}:2`, to, from.mm2);
    return id;
  }

  fieldsOf(kind: LoadKind): object {
    const { random, volts } = this;
    switch (kind) {
      case "lamp":
        return { watts: random.pick([5, 10, 21]) };
      case "led":
        return { watts: random.pick([1, 3]), led: true };
      case "motor":
        return { ohms: Math.round(volts * 5) / 10 };
      default:
        return { ohms: Math.round(volts * (5 + random.below(15))) / 10 };
    }
  }
}

export type LoadKind = "lamp" | "led" | "solenoid" | "motor" | "heater" | "horn";
const LOADS: readonly LoadKind[] = ["lamp", "lamp", "solenoid", "heater", "horn"];
const LETTERS = { lamp: "P", led: "P", solenoid: "M", motor: "M", heater: "E", horn: "P" } as const;
