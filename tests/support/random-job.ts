/**
 * Random jobs that the schema accepts and whose references all lead somewhere. They make no
 * electrical sense: they are for what must hold of any job at all (history, reading and writing,
 * search). The same generator state gives the same job.
 */
import type { Random } from "../../src/base/index.ts";
import {
  type CavityRef,
  CONTROLS,
  type Colour,
  cavityRef,
  type Id,
  type Job,
  type Machine,
  newJob,
  PART_KINDS,
  type Part,
  type PartKindName,
  type PinRef,
  type Plug,
  type Probe,
  pinIdsOf,
  pinRef,
  type Reading,
  ROLE_NAMES,
  type Wire,
} from "../../src/job/index.ts";
import { COLOUR_CODES } from "../../src/standards/index.ts";

export interface JobSize {
  readonly parts?: number;
  readonly wires?: number;
  readonly plugs?: number;
  readonly machines?: number;
}

const PRINTED = ["PWR", "GND", "OUT", "SIG", "SW", "12V OUT", "LAMP SW", "?", "Ω µ é → ±"];
const SHEET = "sheet1";

export function randomJob(random: Random, size: JobSize = {}): Job {
  const { parts = 8, wires = 10, plugs = 2, machines = 2 } = size;
  const job = newJob(`Job ${random.below(1000)}`, random.pick([12, 24, 48]));
  job.diagram.sheets.push({ id: SHEET, title: "Sheet 1" });
  for (let n = 1; n <= parts; n++) job.diagram.parts.push(randomPart(random, `P${n}`));
  for (let n = 1; n <= wires; n++) {
    const wire = randomWire(random, `W${n}`, job);
    if (wire) job.diagram.wires.push(wire);
  }
  for (let n = 1; n <= plugs; n++) job.plugs.push(randomPlug(random, `X${n}`));
  linkSome(random, job);
  job.machines = [];
  for (let n = 1; n <= machines; n++) job.machines.push(randomMachine(random, `machine${n}`, job));
  return job;
}

export const pinRefsOf = (job: Job): PinRef[] =>
  job.diagram.parts.flatMap((part) => pinIdsOf(part).map((pin) => pinRef(part.id, pin)));

export const cavityRefsOf = (job: Job): CavityRef[] =>
  job.plugs.flatMap((plug) => plug.cavities.map((cavity) => cavityRef(plug.id, cavity.mark)));

export const randomPoint = (random: Random): [number, number] => [
  random.below(4961),
  random.below(3508),
];

export function randomPart(
  random: Random,
  id: Id,
  kind: PartKindName = random.pick(PART_KINDS),
): Part {
  const placed = {
    id,
    sheet: SHEET,
    at: randomPoint(random),
    turn: random.pick([0, 90, 180, 270]),
    ...(random.chance(0.4) ? { label: random.pick(["Pump", "Key", "Beacon", "Valve é"]) } : {}),
  };
  const ohms = 1 + random.below(100);
  switch (kind) {
    case "fuse":
    case "breaker":
      return { ...placed, kind, amps: random.pick([5, 7.5, 10, 15, 25]) };
    case "switch":
      return {
        ...placed,
        kind,
        positions: ["off", "on"],
        contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
        control: random.pick(CONTROLS),
      };
    case "module":
      return { ...placed, kind, pins: randomModulePins(random) };
    case "inline":
      return { ...placed, kind, pins: [{ id: "1" }, { id: "2" }] };
    case "offpage":
      return random.chance(0.5)
        ? { ...placed, kind, label: "to cab", is: random.pick(ROLE_NAMES) }
        : { ...placed, kind };
    case "relay":
      return { ...placed, kind, coilOhms: ohms };
    case "lamp":
      return { ...placed, kind, watts: random.pick([5, 21, 70]) };
    case "solenoid":
    case "motor":
    case "heater":
    case "resistor":
    case "horn":
      return { ...placed, kind, ohms };
    case "sender":
      return { ...placed, kind, ohmsMin: 10, ohmsMax: 10 + ohms };
    case "ground":
      return { ...placed, kind, place: random.pick(["frame", "engine", "cab"]) };
    default:
      return { ...placed, kind };
  }
}

function randomModulePins(random: Random) {
  return Array.from({ length: 1 + random.below(8) }, (_, index) => ({
    id: String(index + 1),
    ...(random.chance(0.7) ? { printed: random.pick(PRINTED) } : {}),
  }));
}

export const randomColour = (random: Random): Colour => ({
  base: random.pick(COLOUR_CODES),
  ...(random.chance(0.5) ? { tracer: random.pick(COLOUR_CODES) } : {}),
});

/** Null when the job has no pin to wire. */
export function randomWire(random: Random, id: Id, job: Job): Wire | null {
  const pins = pinRefsOf(job);
  if (pins.length === 0) return null;
  return {
    id,
    from: random.pick(pins),
    to: random.pick(pins),
    ...(random.chance(0.5) ? { colour: randomColour(random) } : {}),
    ...(random.chance(0.3) ? { number: String(random.below(200)) } : {}),
    ...(random.chance(0.5) ? { path: [randomPoint(random), randomPoint(random)] } : {}),
  };
}

export function randomPlug(random: Random, id: Id): Plug {
  return {
    id,
    side: random.pick(["mating", "wire"] as const),
    cavities: Array.from({ length: 1 + random.below(10) }, (_, index) => ({
      mark: String(index + 1),
      at: [(index % 4) * 5, Math.floor(index / 4) * 5] as [number, number],
      ...(random.chance(0.2) ? { empty: true } : {}),
    })),
  };
}

/** Ties some pins to some cavities, none twice. */
function linkSome(random: Random, job: Job): void {
  const pins = pinRefsOf(job);
  for (const cavity of cavityRefsOf(job)) {
    if (pins.length === 0 || random.chance(0.4)) continue;
    const [pin] = pins.splice(random.below(pins.length), 1);
    if (pin !== undefined) job.links.push({ pin, cavity });
  }
}

/** A place to hold a probe to, anywhere in the job. */
export const randomProbe = (random: Random, job: Job): Probe =>
  random.pick([...pinRefsOf(job), ...cavityRefsOf(job), "chassis", "battery+", "battery-"]);

export function randomReading(random: Random, id: Id, job: Job): Reading {
  const quantity = random.pick(["volts", "ohms", "amps", "drop"] as const);
  return {
    id,
    quantity,
    red: randomProbe(random, job),
    black: randomProbe(random, job),
    value: quantity === "ohms" && random.chance(0.3) ? "OL" : random.below(2800) / 100,
    when: random.chance(0.5) ? {} : { engine: random.pick(["off", "running"] as const) },
  };
}

export function randomMachine(random: Random, id: Id, job: Job): Machine {
  const wires = cavityRefsOf(job)
    .filter(() => random.chance(0.5))
    .map((cavity) => ({ cavity, colour: randomColour(random) }));
  const readings = Array.from({ length: random.below(4) }, (_, index) =>
    randomReading(random, `${id}-reading${index + 1}`, job),
  );
  return { id, name: `Machine ${id}`, wires, readings, trials: [] };
}
