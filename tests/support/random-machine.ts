/**
 * Random machines with every kind of part that SPICE can express, wired as a harness might be and
 * often as it should not be: straps missing, lamps in series, diodes either way round, relays that
 * feed relays, modules without a ground. The same generator state gives the same machine.
 */
import type { Random } from "../../src/base/index.ts";
import { circuitOf, pinsOf } from "../../src/circuit/index.ts";
import type { Job, Part, PinRef, When, Wire } from "../../src/job/index.ts";
import { pinRef } from "../../src/job/index.ts";
import { CircuitBuilder } from "./circuit-builder.ts";

const PLACES = ["", "Frame", "engine", "cab"] as const;
const EVENTS = ["operator", "limit", "pressure", "interlock"] as const;

export function randomMachine(random: Random): Job {
  const yard = new Yard(random, random.pick([12, 24, 24, 48]));
  yard.addSupply();
  for (let n = 6 + random.below(18); n > 0; n--) random.pick(RECIPES)(yard);
  return yard.job;
}

/** A state that the machine can be in. */
export function randomWhen(random: Random, job: Job): When {
  const { parts } = circuitOf(job, null);
  const switches: Record<string, string> = {};
  for (const part of parts) {
    if (part.kind === "switch" && random.chance(0.7)) {
      switches[part.id] = random.pick(part.positions);
    }
  }
  const some = (share: number, kinds: readonly Part["kind"][]) =>
    parts.filter(({ kind }) => kinds.includes(kind) && random.chance(share)).map(({ id }) => id);
  return {
    switches,
    unplugged: some(0.12, ["module", "inline"]),
    removed: some(0.05, ["fuse", "breaker", "relay", "lamp", "ground", "splice", "diode"]),
    engine: random.pick(["off", "off", "cranking", "running"]),
  };
}

/** The same state after one switch was turned; or, without a switch, with the engine running. */
export function oneChange(random: Random, job: Job, when: When): When {
  const switches = job.diagram.parts.filter((part) => part.kind === "switch");
  if (switches.length === 0) return { ...when, engine: "running" };
  const { id, positions } = random.pick(switches);
  const other = positions.filter((position) => position !== (when.switches?.[id] ?? positions[0]));
  return { ...when, switches: { ...when.switches, [id]: random.pick(other) } };
}

export const pinRefsOf = (job: Job): readonly PinRef[] =>
  circuitOf(job, null).parts.flatMap((part) => pinsOf(part).map(({ id }) => pinRef(part.id, id)));

class Yard {
  readonly random: Random;
  readonly volts: number;
  /** Lines that may carry plus. */
  readonly feeds: PinRef[] = [];
  /** Lines that lead back. */
  readonly returns: PinRef[] = [];
  /** Lines in between, and ends that lead nowhere yet. */
  readonly lines: PinRef[] = [];
  private readonly circuit: CircuitBuilder;
  private readonly counts = new Map<string, number>();

  constructor(random: Random, systemVoltage: number) {
    this.random = random;
    this.volts = systemVoltage;
    this.circuit = new CircuitBuilder(systemVoltage);
  }

  get job(): Job {
    return this.circuit.job;
  }

  /** One battery or two, with minus on the frame or not, and grounds that a strap joins or not. */
  addSupply(): void {
    const { random } = this;
    const fields = (share: number) => ({
      ...(random.chance(0.8) ? { volts: this.volts * share * (0.9 + random.next() * 0.2) } : {}),
      ...(random.chance(0.8) ? { ohms: random.pick([0, 0.005, 0.02, 0.1]) } : {}),
    });
    const series = random.chance(0.2);
    const first = this.part("battery", "G", fields(series ? 0.5 : 1));
    let minus: PinRef = `${first}:-`;
    if (series || random.chance(0.1)) {
      const second = this.part("battery", "G", fields(series ? 0.5 : 1));
      if (series) {
        this.run(`${second}:+`, minus);
        minus = `${second}:-`;
      } else {
        this.run(`${first}:+`, `${second}:+`);
        this.run(`${second}:-`, minus);
      }
    }
    this.feeds.push(`${first}:+`);
    this.returns.push(minus);
    if (random.chance(0.85)) this.run(minus, this.ground(random.chance(0.8) ? "" : "engine"));
    if (random.chance(0.7)) this.run(this.ground(""), this.ground("engine"));
    if (random.chance(0.5)) this.run(this.ground("cab"), this.ground(""));
    this.feeds.push(this.fused(`${first}:+`));
  }

  /** `fields`: those of the kind; that they are is checked by reading the whole job. */
  part(kind: Part["kind"], letter: string, fields: object = {}): string {
    const count = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, count);
    const id = `${letter}${count}`;
    this.circuit.part(kind, id, fields as never);
    return id;
  }

  /** A wire with or without size and length, at times by way of what a loom has on the way. */
  run(from: PinRef, to: PinRef): void {
    switch (this.random.below(9)) {
      case 0: {
        const splice = this.part("splice", "SP");
        this.wire(from, `${splice}:1`);
        this.wire(`${splice}:1`, to);
        this.lines.push(`${splice}:1`);
        break;
      }
      case 1: {
        const plug = this.part("inline", "XI", { pins: [{ id: "1" }, { id: "2" }] });
        const pin = this.random.pick(["1", "2"]);
        this.wire(from, `${plug}:${pin}`);
        this.wire(`${plug}:${pin}`, to);
        break;
      }
      case 2: {
        const here = this.part("offpage", "XP");
        const there = this.part("offpage", "XP");
        for (const part of this.job.diagram.parts) {
          if (part.kind === "offpage" && (part.id === here || part.id === there)) {
            part.label = part.id === here ? `to ${here}` : ` TO ${here}`;
          }
        }
        this.wire(from, `${here}:1`);
        this.wire(`${there}:1`, to);
        break;
      }
      default:
        this.wire(from, to);
    }
  }

  private wire(from: PinRef, to: PinRef): void {
    const { random } = this;
    this.circuit.wire(`${from} ${to}`);
    const made = this.job.diagram.wires.at(-1) as Wire;
    const metres = Math.round((0.2 + random.next() * 12) * 10) / 10;
    if (random.chance(0.3)) Object.assign(made, { mm2: random.pick([0.5, 1, 2.5, 16]), metres });
    else if (random.chance(0.2)) Object.assign(made, { awg: random.pick([20, 16, 12, 4]), metres });
    else if (random.chance(0.1)) Object.assign(made, { mm2: 1.5 });
  }

  ground(place: string = this.random.pick(PLACES)): PinRef {
    const id = this.part("ground", "X", place === "" ? {} : { place });
    return `${id}:1`;
  }

  fused(from: PinRef): PinRef {
    const kind = this.random.pick(["fuse", "breaker"] as const);
    const id = this.part(kind, kind === "fuse" ? "F" : "Q", {
      amps: this.random.pick([2, 10, 30]),
    });
    this.run(from, `${id}:1`);
    return `${id}:2`;
  }

  feed(): PinRef {
    return this.random.pick(this.feeds);
  }

  back(): PinRef {
    return this.random.chance(0.3) ? this.random.pick(this.returns) : this.ground();
  }

  /** Anything there is. */
  any(): PinRef {
    const all = [...this.feeds, ...this.lines, ...this.returns];
    return this.random.pick(all);
  }

  /** Most often a feed. */
  upper(): PinRef {
    return this.random.chance(0.75) ? this.feed() : this.any();
  }

  /** Most often a way back. */
  lower(): PinRef {
    return this.random.chance(0.75) ? this.back() : this.any();
  }

  between(a: PinRef, b: PinRef): void {
    const [from, to] = this.random.chance(0.5)
      ? [this.upper(), this.lower()]
      : [this.lower(), this.upper()];
    this.run(from, a);
    this.run(b, to);
  }

  ohms(): number {
    return this.random.pick([0.05, 1.2, 6, 24, 96, 330, 4700, 1e5, 2.2e6]);
  }
}

/** A line that may or may not lead on to something. */
const opens = (yard: Yard, pin: PinRef) => {
  yard.lines.push(pin);
  if (yard.random.chance(0.6)) yard.feeds.push(pin);
};

const twoPins =
  (kind: Part["kind"], letter: string, fields: (yard: Yard) => object) => (yard: Yard) => {
    const id = yard.part(kind, letter, fields(yard));
    yard.between(`${id}:1`, `${id}:2`);
  };

function addSwitch(yard: Yard): void {
  const { random } = yard;
  const poles = 1 + random.below(3);
  const positions = ["a", "b", "c"].slice(0, 2 + random.below(2));
  const contacts = Array.from({ length: poles }, (_, pole) => [
    { between: [`${pole}0`, `${pole}1`] as [string, string], closedIn: [random.pick(positions)] },
    ...(random.chance(0.5)
      ? [{ between: [`${pole}0`, `${pole}2`] as [string, string], closedIn: positions.slice(1) }]
      : []),
  ]).flat();
  const id = yard.part("switch", "S", {
    positions,
    control: random.pick([...EVENTS, "key", "isolator", "emergency-stop"]),
    contacts,
  });
  for (let pole = 0; pole < poles; pole++) yard.run(yard.upper(), `${id}:${pole}0`);
  for (const { between } of contacts) opens(yard, `${id}:${between[1]}`);
}

function addRelay(yard: Yard): void {
  const { random } = yard;
  const poles = random.pick([1, 1, 1, 2, 3]);
  const [plus, minus] = random.chance(0.5) ? ["85", "86"] : ["86", "85"];
  const id = yard.part("relay", "K", {
    ...(random.chance(0.7) ? { coilOhms: random.pick([48, 90, 320]) } : {}),
    // now and then the wrong way round, which shorts the feed
    ...(random.chance(0.3) ? { diodeCathode: random.chance(0.9) ? plus : minus } : {}),
    ...(random.chance(0.2) ? { coilResistor: 560 } : {}),
    ...(random.chance(0.3) ? { pullIn: 0.6, dropOut: 0.3 } : {}),
    ...(poles > 1 ? { poles } : {}),
  });
  yard.run(yard.upper(), `${id}:${plus}`);
  yard.run(`${id}:${minus}`, yard.lower());
  for (let pole = 0; pole < poles; pole++) {
    const letter = pole === 0 ? "" : String.fromCharCode("a".charCodeAt(0) + pole);
    yard.run(random.chance(0.85) ? yard.upper() : yard.back(), `${id}:30${letter}`);
    opens(yard, `${id}:87${letter}`);
    if (random.chance(0.4)) opens(yard, `${id}:87a${letter}`);
  }
  if (random.chance(0.1)) yard.run(`${id}:87`, `${id}:${plus}`);
  if (random.chance(0.03)) yard.run(`${id}:87a`, `${id}:${plus}`);
}

function addModule(yard: Yard): void {
  const { random } = yard;
  const powered = random.chance(0.8);
  const id = yard.part("module", "A", {
    pins: ["1", "2", "3", "4", "5", "6", "7"].map((pin) => ({ id: pin })),
    ...(powered
      ? {
          power: {
            supply: random.chance(0.2) ? ["1", "7"] : ["1"],
            ground: ["2"],
            ...(random.chance(0.3) ? { minVolts: yard.volts * 0.4 } : {}),
          },
        }
      : {}),
    ...(random.chance(0.6) ? { sources: [{ between: ["5", "2"], volts: 5, ohms: 20 }] } : {}),
    ...(random.chance(0.9)
      ? {
          behaviour: {
            paths: [
              {
                between: random.pick([
                  ["1", "4"],
                  ["4", "2"],
                ]),
                ...(random.chance(0.9) ? { input: "3" } : {}),
                active: random.pick(["high", "low"]),
                does: random.pick(["follow", "follow", "invert", "always", "flash"]),
              },
            ],
            loads: [
              { between: ["1", "2"], ohms: 180 },
              ...(random.chance(0.5) ? [{ between: ["3", "2"], ohms: 4700 }] : []),
            ],
          },
        }
      : {}),
  });
  yard.run(yard.feed(), `${id}:1`);
  if (random.chance(0.9)) yard.run(`${id}:2`, yard.back());
  yard.run(random.chance(0.6) ? yard.any() : yard.back(), `${id}:3`);
  yard.run(`${id}:4`, yard.any());
  yard.lines.push(`${id}:4`, `${id}:5`);
  if (random.chance(0.3)) yard.feeds.push(`${id}:5`);
}

const RECIPES: readonly ((yard: Yard) => void)[] = [
  addSwitch,
  addSwitch,
  addRelay,
  addRelay,
  addModule,
  (yard) => void yard.feeds.push(yard.fused(yard.upper())),
  twoPins("lamp", "P", ({ random }) => (random.chance(0.7) ? { watts: 5 + random.below(50) } : {})),
  twoPins("lamp", "P", ({ random }) => ({ watts: 2 + random.below(50) })),
  twoPins("lamp", "P", ({ random }) => ({ led: true, watts: 1 + random.below(8) })),
  twoPins("lamp", "P", () => ({ led: true })),
  twoPins("solenoid", "M", ({ random }) => (random.chance(0.5) ? { diode: true, ohms: 24 } : {})),
  twoPins("motor", "M", ({ random }) => (random.chance(0.5) ? { ohms: 0.3 } : {})),
  twoPins("heater", "E", () => ({})),
  twoPins("horn", "P", ({ random }) => (random.chance(0.5) ? { ohms: 3 } : {})),
  twoPins("resistor", "R", (yard) => ({ ohms: yard.ohms() })),
  twoPins("resistor", "R", (yard) => ({ ohms: yard.ohms() })),
  twoPins("sender", "B", ({ random }) => (random.chance(0.5) ? { ohmsMin: 3, ohmsMax: 180 } : {})),
  (yard) => {
    const id = yard.part("solenoid", "M", {
      ohmsPull: 0.4,
      ohmsHold: 12,
      ...(yard.random.chance(0.4) ? { diode: true } : {}),
    });
    yard.run(yard.upper(), `${id}:P`);
    if (yard.random.chance(0.8)) yard.run(yard.upper(), `${id}:H`);
    yard.run(`${id}:E`, yard.lower());
  },
  (yard) => {
    const id = yard.part("potentiometer", "R", yard.random.chance(0.5) ? { ohms: 1000 } : {});
    yard.between(`${id}:1`, `${id}:2`);
    if (yard.random.chance(0.5)) yard.run(`${id}:W`, yard.any());
    else yard.lines.push(`${id}:W`);
  },
  (yard) => {
    const id = yard.part("diode", "V");
    yard.run(yard.upper(), `${id}:A`);
    yard.run(`${id}:K`, yard.random.chance(0.5) ? yard.any() : yard.feed());
    opens(yard, `${id}:K`);
  },
  (yard) => {
    const id = yard.part("diode", "V");
    yard.between(`${id}:A`, `${id}:K`);
  },
  (yard) => {
    const id = yard.part("alternator", "G");
    yard.run(`${id}:B+`, yard.feed());
    if (yard.random.chance(0.9)) yard.run(`${id}:E`, yard.ground("engine"));
    const lamp = yard.part("lamp", "P", { watts: 3 });
    yard.run(yard.feed(), `${lamp}:1`);
    yard.run(`${lamp}:2`, `${id}:D+`);
    yard.lines.push(`${id}:D+`);
  },
  (yard) => {
    const id = yard.part("converter", "T", yard.random.chance(0.5) ? { outVolts: 5 } : {});
    yard.run(yard.upper(), `${id}:in+`);
    yard.run(`${id}:in-`, yard.back());
    if (yard.random.chance(0.8)) yard.run(`${id}:out-`, yard.back());
    opens(yard, `${id}:out+`);
  },
  (yard) => {
    const id = yard.part("offpage", "XQ", { is: yard.random.pick(["supply", "ground"] as const) });
    yard.run(`${id}:1`, yard.any());
  },
];
