import { seededRandom } from "../../../src/base/index.ts";
import { foundAsDrawn, readingsOf } from "./correct-job.ts";
import { broken, FAULT_NAMES, someFault } from "./faults.ts";
import type { Setup } from "./meter.ts";
import type { PaperJob } from "./paper-job.ts";
import { someSetup } from "./setups.ts";
import { type Fault, healthyTruth } from "./true-machine.ts";

export interface FaultyJob {
  readonly paper: PaperJob;
  readonly name: (typeof FAULT_NAMES)[number];
  readonly fault: Fault;
  /** The machine that has it. */
  readonly machine: string;
}

/**
 * The same job with one machine more, which was built as drawn and has one real fault; its readings
 * show what a meter shows there. The drawing stays right: nothing in it is contradicted.
 */
export function withOneFault(paper: PaperJob, seed: number): FaultyJob {
  const random = seededRandom(seed);
  const copy: PaperJob = { ...paper, job: structuredClone(paper.job) };
  const healthy = healthyTruth(random, copy);
  for (;;) {
    const name = random.pick(FAULT_NAMES);
    const fault = someFault(random, copy, name);
    if (fault === null) continue;
    const machine = foundAsDrawn(random, copy);
    const truth = broken(healthy, fault);
    const near = nearby(copy, fault);
    const setup = (): Setup => {
      const far = someSetup(random, copy);
      return random.chance(0.5) ? { ...far, ...moved(copy, far, random.pick(near)) } : far;
    };
    machine.readings = readingsOf(random, truth, `${machine.id}r`, 6 + random.below(6), setup);
    return { paper: copy, name, fault, machine: machine.id };
  }
}

/** Cavities whose lines the fault touches, else all. */
function nearby({ job, pins }: PaperJob, fault: Fault): readonly string[] {
  const places = new Set(
    "at" in fault ? [fault.at, ...(fault.is === "leak" ? [fault.to] : [])] : [],
  );
  const owner = (ref: string) => ref.slice(0, Math.max(0, ref.indexOf(":"))) || ref;
  const touched = new Set<string>();
  for (let round = 0; round < 4; round++) {
    for (const { id, from, to } of job.diagram.wires) {
      const ends = [id, from, to, owner(from), owner(to)];
      if (!ends.some((one) => places.has(one) || touched.has(one))) continue;
      for (const end of [from, to]) {
        touched.add(end);
        if (!/^(SP|XI|XE|A|G)\d/.test(end)) touched.add(owner(end));
      }
    }
  }
  const near = pins.flatMap(({ pin, cavity }) =>
    cavity !== null && (touched.has(pin) || places.has(pin)) ? [cavity] : [],
  );
  return near.length > 0 ? near : pins.flatMap(({ cavity }) => cavity ?? []);
}

/**
 * The same reading at another cavity, with that one's module unplugged if the first one's was;
 * nothing where the instrument has no business there.
 */
function moved({ pins }: PaperJob, setup: Setup, cavity: string): Partial<Setup> {
  const isCavity = (probe: string) => pins.some((pin) => pin.cavity === probe);
  const end = isCavity(setup.red) ? "red" : "black";
  const there = pins.find((pin) => pin.cavity === cavity);
  if (!isCavity(setup[end]) || !there) return {};
  if (setup.with === "test-lamp" && !there.bearsLamp) return {};
  if (setup.quantity === "ohms" && !there.isOhmic) return {};
  const { unplugged, ...rest } = setup.when;
  const module = there.pin.slice(0, there.pin.indexOf(":"));
  return { [end]: cavity, when: { ...rest, ...(unplugged ? { unplugged: [module] } : {}) } };
}
