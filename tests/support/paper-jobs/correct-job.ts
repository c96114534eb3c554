import { type Random, seededRandom } from "../../../src/base/index.ts";
import type { Machine, Reading } from "../../../src/job/index.ts";
import { drawnRight } from "./drawing.ts";
import { measured, type Setup } from "./meter.ts";
import type { PaperJob } from "./paper-job.ts";
import { someSetup } from "./setups.ts";
import { healthyTruth, type TrueMachine } from "./true-machine.ts";

/**
 * A believable job in which everything is right: drawing, words, plugs, ties, wires and readings of
 * one or two machines that were built as drawn. The same seed gives the same job.
 */
export function correctJob(seed: number): PaperJob {
  const random = seededRandom(seed);
  const paper = drawnRight(random);
  for (let count = random.pick([1, 1, 2]); count > 0; count--) {
    const machine = foundAsDrawn(random, paper);
    const truth = healthyTruth(random, paper);
    machine.readings = readingsOf(random, truth, `${machine.id}r`, 3 + random.below(6));
  }
  return paper;
}

/** A machine more, whose wires have the colours, numbers and sizes that are drawn. */
export function foundAsDrawn(random: Random, { job }: PaperJob): Machine {
  const id = `machine${job.machines.length + 1}`;
  const wires = job.links.flatMap(({ pin, cavity }) => {
    const [drawn] = job.diagram.wires.filter(({ from, to }) => from === pin || to === pin);
    if (!drawn || random.chance(0.3)) return [];
    const { colour, number, mm2 } = drawn;
    return [
      {
        cavity,
        ...(colour ? { colour: { ...colour } } : {}),
        ...(number === undefined ? {} : { number }),
        ...(mm2 === undefined ? {} : { mm2 }),
      },
    ];
  });
  const machine: Machine = { id, name: `Machine ${id}`, wires, readings: [], trials: [] };
  job.machines.push(machine);
  return machine;
}

/** Readings of one machine, taken minutes apart. */
export function readingsOf(
  random: Random,
  truth: TrueMachine,
  prefix: string,
  count: number,
  setup: () => Setup = () => someSetup(random, truth.paper),
): Reading[] {
  const taken = new Map<string, Reading>();
  for (let n = 1; n <= count; n++) {
    const how = setup();
    const value = measured(random, truth, how);
    // the same thing is read once: a second time it could wander, as floating wires do
    const key = JSON.stringify(how);
    if (value === null || taken.has(key)) continue;
    const at = `2026-03-0${1 + random.below(9)}T10:${10 + n}:00Z`;
    taken.set(key, { id: `${prefix}${n}`, ...how, value, at });
  }
  return [...taken.values()];
}
