import type { Random } from "../../../src/base/index.ts";
import type { Job, PinRef, Step } from "../../../src/job/index.ts";
import { type CircuitBuilder, withBattery } from "../../support/circuit-builder.ts";

export interface Wanted {
  /** Parts that remember: latching relays, and modules that act in time or by counting. */
  readonly memory: boolean;
  /** Modules of which nobody has said what they do, and lines that go on untraced. */
  readonly unsaid: boolean;
}

const AT_ONCE = ["follow", "invert"] as const;
const IN_TIME = ["follow", "invert", "toggle", "delay-on", "delay-off", "flash"] as const;

/**
 * A machine as nobody would build it: every line may be fed, switched, loaded, commanded by relays
 * and modules that it commands itself, and grounded by mistake. The same generator state gives the
 * same machine.
 */
export function randomMachine(random: Random, wanted: Wanted): Job {
  const circuit = withBattery();
  const counts = new Map<string, number>();
  const id = (letter: string) => {
    const count = (counts.get(letter) ?? (letter === "G" ? 1 : 0)) + 1;
    counts.set(letter, count);
    return `${letter}${count}`;
  };
  const wire = (from: PinRef, to: PinRef) => {
    circuit.wire(`${from} ${to}`);
    const made = circuit.job.diagram.wires.at(-1);
    if (made && random.chance(0.15)) Object.assign(made, { mm2: 1, metres: 1 + random.below(60) });
  };
  const splice = (): PinRef => {
    const own = id("SP");
    circuit.part("splice", own);
    return `${own}:1`;
  };
  const main = id("F");
  circuit.part("fuse", main, { amps: 10 + random.below(30) });
  wire("G1:+", `${main}:1`);
  const key = id("S");
  circuit.key(key);
  wire(`${main}:2`, `${key}:30`);
  const lines: PinRef[] = [`${main}:2`, `${key}:15`, `${key}:50`, "GND1:1", "GND1:1"];
  const line = () => random.pick(lines);
  const fresh = (from: PinRef): PinRef => {
    const own = splice();
    wire(from, own);
    lines.push(own);
    return own;
  };

  const makers: readonly (() => void)[] = [
    () => {
      const own = id("S");
      circuit.contact(own, "operator", {
        springReturn: random.chance(0.5),
        contacts: [{ between: ["1", "2"], closedIn: [random.pick(["rest", "worked"])] }],
      });
      wire(line(), `${own}:1`);
      fresh(`${own}:2`);
    },
    () => {
      const own = id("F");
      circuit.part(random.pick(["fuse", "breaker"]), own, { amps: 1 + random.below(15) });
      wire(line(), `${own}:1`);
      fresh(`${own}:2`);
    },
    () => load(circuit, random, id, wire, line(), line()),
    () => load(circuit, random, id, wire, line(), "GND1:1"),
    () => {
      const own = id("K");
      circuit.part("relay", own, {
        coilOhms: 100 + random.below(300),
        ...(random.chance(0.3) ? { diodeCathode: "86" as const } : {}),
        ...(wanted.memory && random.chance(0.2) ? { latching: true } : {}),
      });
      wire(line(), `${own}:86`);
      wire(random.chance(0.7) ? "GND1:1" : line(), `${own}:85`);
      wire(line(), `${own}:30`);
      fresh(`${own}:87`);
      if (random.chance(0.5)) fresh(`${own}:87a`);
    },
    () => {
      const own = id("A");
      const does = random.pick(wanted.memory ? IN_TIME : AT_ONCE);
      circuit.module(
        own,
        { "1": null, "2": null, "3": null, "4": null },
        {
          ...(random.chance(0.8) ? { power: { supply: ["1"], ground: ["2"] } } : {}),
          behaviour: {
            paths: [
              {
                between: [random.pick(["1", "2"]), "4"],
                input: "3",
                active: random.pick(["high", "low"]),
                does,
                ...(random.chance(0.7) ? { seconds: (1 + random.below(8)) / 4 } : {}),
              },
            ],
            loads: random.chance(0.4) ? [{ between: ["1", "2"], ohms: 50 }] : [],
          },
        },
      );
      wire(random.pick([`${main}:2`, `${key}:15`]), `${own}:1`);
      wire(random.chance(0.8) ? "GND1:1" : line(), `${own}:2`);
      wire(line(), `${own}:3`);
      fresh(`${own}:4`);
    },
    () => {
      const own = id("XI");
      circuit.part("inline", own, { pins: [{ id: "1" }, { id: "2" }] });
      for (const pin of ["1", "2"]) {
        wire(line(), `${own}:${pin}`);
        fresh(`${own}:${pin}`);
      }
    },
    () => {
      const own = id("V");
      circuit.part("diode", own);
      wire(line(), `${own}:A`);
      fresh(`${own}:K`);
    },
    // a second way beside a first: wires that share
    () => wire(line(), lines.at(-1) ?? line()),
    () => {
      if (!wanted.unsaid) return;
      const own = id("A");
      circuit.module(own, { "1": null, "2": null, "3": null });
      for (const pin of ["1", "2", "3"]) wire(line(), `${own}:${pin}`);
    },
    () => {
      if (!wanted.unsaid) return;
      const own = id("XP");
      circuit.part("offpage", own, { label: own });
      wire(line(), `${own}:1`);
    },
  ];
  for (let count = 6 + random.below(22); count > 0; count--) random.pick(makers)();
  return circuit.job;
}

function load(
  circuit: CircuitBuilder,
  random: Random,
  id: (letter: string) => string,
  wire: (from: PinRef, to: PinRef) => void,
  from: PinRef,
  to: PinRef,
) {
  const own = id("E");
  switch (random.below(4)) {
    case 0:
      circuit.part("lamp", own, { watts: 5 + random.below(50), led: random.chance(0.2) });
      break;
    case 1:
      circuit.part("heater", own, { ohms: 2 + random.below(40) });
      break;
    case 2:
      circuit.part("solenoid", own, { ohms: 10 + random.below(40), diode: random.chance(0.3) });
      break;
    default:
      circuit.part("resistor", own, { ohms: 10 + random.below(1000) });
  }
  wire(from, `${own}:1`);
  wire(`${own}:2`, to);
}

/** Something that somebody might do to the machine next; not all of it can be done. */
export function randomStep(random: Random, job: Job): Step {
  const { parts } = job.diagram;
  const switches = parts.filter((part) => part.kind === "switch");
  const any = random.pick(parts).id;
  const one = random.pick(switches);
  switch (random.below(12)) {
    case 0:
      return { do: "release", switch: one.id };
    case 1:
    case 2:
      return { do: "wait", seconds: (1 + random.below(12)) / 4 };
    case 3:
      return { do: "unplug", id: any };
    case 4:
      return { do: "plug", id: any };
    case 5:
      return { do: "remove", id: any };
    case 6:
    case 7:
      return { do: "fit", id: any };
    default:
      return { do: "turn", switch: one.id, position: random.pick(one.positions) };
  }
}
