import type { Random } from "../../src/base/index.ts";
import type { Job, When } from "../../src/job/index.ts";
import { loadedMachine } from "./healthy-machine.ts";
import { randomCircuit } from "./random-circuit.ts";
import { randomMachine, randomWhen } from "./random-machine.ts";

/** A drawing of any of three makes, with states that it may be in. */
export function someDrawing(random: Random): { job: Job; states: readonly When[] } {
  switch (random.below(3)) {
    case 0:
      return { job: loadedMachine(random).job, states: [{}, { switches: { S1: "worked" } }] };
    case 1: {
      const job = randomCircuit(random);
      const states = [0, 1].map(() => ({ ...randomWhen(random, job), unplugged: ["A1"] }));
      return { job, states };
    }
    default: {
      const job = randomMachine(random);
      return { job, states: [randomWhen(random, job), randomWhen(random, job)] };
    }
  }
}
