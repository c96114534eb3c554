/**
 * Small machines of the kinds that a reading's band is made of, and healthy ones drawn from them:
 * each part's own value anywhere within what a good part may have, written into the job itself, so
 * that the solver's nominal answer for the drawn machine is what a meter would show on it.
 */
import type { Random } from "../../src/base/index.ts";
import { circuitOf } from "../../src/circuit/index.ts";
import type { Job, Part, Wire } from "../../src/job/index.ts";
import { CircuitBuilder } from "./circuit-builder.ts";

/** Where a value lies between its two limits, 0 to 1. */
export type Draw = (name: string) => number;

/** Limits of the job format and the trade; common practice, no source, unless said otherwise. */
const WINDING = [0.8, 1.4] as const;
/** Hot, as made. */
const FILAMENT = [0.9, 1.1] as const;
/** Times that a hot filament has of its cold ohms: the published 15, the common rule of 10. */
const COLD_RATIO = [8, 16] as const;
const BATTERY = [0.94, 1.05] as const;
const INTERNAL = [0.5, 3] as const;
/** Ω of a wire with no size or length (job format) and of a contact at each end. */
const WIRE = [0, 0.5] as const;
const CONTACT = [0.0005, 0.05] as const;
/** Of a known wire: cold, tight and new to hot with two joints. */
const KNOWN_WIRE = [0.85, 1.3] as const;
const RESISTOR = [0.95, 1.05] as const;

const within = ([low, high]: readonly [number, number], share: number) =>
  low + (high - low) * share;

/** Ω a metre of 1 mm², IEC 60228 class 5. */
const OHMS_PER_METRE = 0.0195;

/** A wire that has these ohms. */
const withOhms = (wire: Wire, ohms: number): Wire => ({
  ...wire,
  mm2: 1,
  metres: Math.max(1e-6, ohms / OHMS_PER_METRE),
});

/** One healthy machine. `cold`: filaments as an ohmmeter finds them. */
export function healthyMachine(job: Job, draw: Draw, cold = false): Job {
  const { parts, wires } = circuitOf(job, null);
  const contacts = new Set(
    parts.flatMap(({ id, kind }) => (["fuse", "switch", "relay"].includes(kind) ? [id] : [])),
  );
  // a contact's ohms lie in the wire that feeds it; no probe goes between the two
  const contactOf = (ref: string) => {
    const [owner = "", pin = ""] = ref.split(":");
    return contacts.has(owner) && (pin === "1" || pin === "30");
  };
  return {
    ...job,
    diagram: {
      ...job.diagram,
      parts: parts.map((part) => healthyPart(part, draw, cold, job.systemVoltage)),
      wires: wires.map((wire) => {
        const known = wire.metres === undefined ? null : wire.metres * OHMS_PER_METRE;
        const own =
          known === null
            ? within(WIRE, draw(wire.id))
            : known * within(KNOWN_WIRE, draw(wire.id)) + 0.02 * draw(`${wire.id} joints`);
        const joints = [wire.from, wire.to]
          .filter(contactOf)
          .reduce((sum, ref) => sum + within(CONTACT, draw(`${ref} contact`)), 0);
        return withOhms(wire, own + joints);
      }),
    },
  };
}

function healthyPart(part: Part, draw: Draw, cold: boolean, volts: number): Part {
  const at = (limits: readonly [number, number], of = "") => within(limits, draw(part.id + of));
  switch (part.kind) {
    case "battery":
      return {
        ...part,
        volts: volts * 1.05 * at(BATTERY),
        ohms: (part.ohms ?? 0.01) * at(INTERNAL, " internal"),
      };
    case "lamp": {
      const hot = (volts ** 2 / (part.watts ?? 21)) * at(FILAMENT);
      if (!cold) return { ...part, watts: volts ** 2 / hot };
      const { id, sheet, at: place, turn } = part;
      return {
        kind: "heater",
        id,
        sheet,
        at: place,
        turn,
        ohms: hot / at(COLD_RATIO, " cold"),
      };
    }
    case "solenoid":
    case "heater":
      return { ...part, ohms: (part.ohms ?? 0) * at(WINDING) };
    case "resistor":
      return { ...part, ohms: (part.ohms ?? 0) * at(RESISTOR) };
    case "relay":
      return { ...part, coilOhms: (part.coilOhms ?? 0) * at(WINDING) };
    case "sender":
      return { ...part, ...sender(at([part.ohmsMin ?? 0, part.ohmsMax ?? 0])) };
    default:
      return part;
  }
}

const sender = (ohms: number) => ({ ohmsMin: ohms, ohmsMax: ohms });

/**
 * A fused feed through a switch to a few loads, some in series with a resistor or another load,
 * some behind a relay, all with a ground of their own or a shared one. `points` are worth probing.
 */
export function loadedMachine(random: Random): { job: Job; points: string[]; loads: string[] } {
  const volts = random.pick([12, 24]);
  const circuit = new CircuitBuilder(volts)
    .part("battery", "G1")
    .part("ground", "GND1")
    .part("fuse", "F1", { amps: 30 })
    .contact("S1", "operator")
    .part("splice", "SP1")
    .part("splice", "SP2")
    .part("ground", "GND2")
    .wire("G1:- GND1:1", "G1:+ F1:1", "F1:2 S1:1", "S1:2 SP1:1", "SP2:1 GND2:1");
  const points = ["F1:2", "SP1:1", "SP2:1"];
  const loads: string[] = [];
  const load = (n: number): [string, string] => {
    const id = `E${n}`;
    const ohms = Math.round(volts * (2 + random.next() * 8)) / 2;
    loads.push(id);
    switch (random.below(3)) {
      case 0:
        circuit.part("solenoid", id, { ohms });
        break;
      case 1:
        circuit.part("lamp", id, { watts: random.pick([5, 10, 21]) });
        break;
      default:
        circuit.part("heater", id, { ohms });
    }
    points.push(`${id}:1`, `${id}:2`);
    return [`${id}:1`, `${id}:2`];
  };
  for (let n = 1, many = 1 + random.below(3); n <= many; n++) {
    const [near, far] = load(n * 10);
    const ground = random.chance(0.6) ? "SP2:1" : "GND2:1";
    switch (random.below(4)) {
      case 0: {
        const [second, end] = load(n * 10 + 1);
        circuit.wire(`SP1:1 ${near}`, `${far} ${second}`, `${end} ${ground}`);
        break;
      }
      case 1: {
        const ohms = random.pick([10, 47, 470]);
        circuit.part("resistor", `R${n}`, { ohms });
        circuit.wire(`SP1:1 R${n}:1`, `R${n}:2 ${near}`, `${far} ${ground}`);
        points.push(`R${n}:2`);
        break;
      }
      case 2:
        circuit.part("relay", `K${n}`, { coilOhms: 80 * (volts / 12) ** 2, pullIn: 0.4 });
        circuit.wire(`SP1:1 K${n}:86`, `K${n}:85 ${ground}`, `G1:+ K${n}:30`);
        circuit.wire(`K${n}:87 ${near}`, `${far} ${ground}`);
        loads.push(`K${n}`);
        break;
      default:
        circuit.wire(`SP1:1 ${near}`, `${far} ${ground}`);
    }
  }
  for (const wire of circuit.job.diagram.wires) {
    if (random.chance(0.3)) Object.assign(wire, { mm2: 1, metres: 1 + random.below(8) });
  }
  return { job: circuit.job, points, loads };
}
