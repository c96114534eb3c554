/**
 * The large job as somebody in the middle of the work has it: some large plugs among its modules,
 * every wire there looked at, and readings at the first few plugs, some of them odd.
 */
import {
  type CavityRef,
  cavityRef,
  type Job,
  type Reading,
  type Wire,
} from "../../src/job/index.ts";
import { bigJob } from "./big-job.ts";

/** At every fortieth cavity another colour than the one drawn. */
const COLOURS_DIFFER = 40;

/** `measured`: how many of the plugs have readings, eight each. */
export function pluggedBigJob(wires: number, plugs: number, measured: number): Job {
  const job = bigJob(wires, plugs);
  const [machine] = job.machines;
  if (!machine) throw new Error("a job without a machine");
  for (const wire of job.diagram.wires) Object.assign(wire, sizeOf(wire));
  job.links.forEach(({ cavity }, index) => {
    const base = index % COLOURS_DIFFER === COLOURS_DIFFER - 1 ? "RD" : "BK";
    machine.wires.push({ cavity, colour: { base, tracer: "WH" } });
  });
  job.plugs.slice(0, measured).forEach(({ id: plug }, index) => {
    const readings = readingsAt(plug.slice(1), (mark) => cavityRef(plug, mark), index % 2 === 1);
    for (const reading of readings)
      machine.readings.push({ id: `R${machine.readings.length + 1}`, ...reading });
  });
  return job;
}

/** What a good machine shows at the pins that every module has; `isOdd`: its solenoid is burnt out. */
function readingsAt(
  module: string,
  at: (mark: string) => CavityRef,
  isOdd: boolean,
): readonly Omit<Reading, "id">[] {
  const when = { unplugged: [module] };
  const keyOn = { ...when, switches: { S1: "on" } };
  const dead = { unplugged: [module], removed: ["G1"] };
  return [
    { quantity: "volts", red: at("1"), black: "chassis", value: 25.2, when },
    { quantity: "volts", red: "battery+", black: at("2"), value: 25.2, when },
    { quantity: "volts", red: at("3"), black: "chassis", value: 0, when },
    { quantity: "volts", red: at("1"), black: at("2"), value: 25.1, when: keyOn },
    { quantity: "volts", red: at("6"), black: "chassis", value: 0, when: keyOn },
    { quantity: "ohms", red: at("2"), black: "chassis", value: 0.1, when: dead },
    { quantity: "ohms", red: at("6"), black: at("2"), value: isOdd ? "OL" : 24.3, when: dead },
    { quantity: "ohms", red: at("4"), black: at("2"), value: isOdd ? 0.2 : "OL", when: dead },
  ];
}

/** Short battery leads, ground leads to match, and thin wires to everything else. */
function sizeOf({ from, to }: Wire): Pick<Wire, "mm2" | "metres"> {
  const ends = [from, to];
  const isAt = (name: RegExp) => ends.some((end) => name.test(end));
  if (isAt(/^(G1|S1):/)) return { mm2: 50, metres: 1 };
  return isAt(/^(XG|E)\d+:/) ? { mm2: 6, metres: 1 } : { mm2: 2.5, metres: 3 };
}
