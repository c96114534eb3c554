import { type Random, seededRandom } from "../../src/base/index.ts";
import type { Job } from "../../src/job/index.ts";
import { CircuitBuilder } from "./circuit-builder.ts";
import type { DenseBranch } from "./dense-solver.ts";

/** A network of batteries and resistors that all hangs together, its nodes numbered from 0. */
export interface ResistorNetwork {
  readonly nodeCount: number;
  readonly branches: readonly DenseBranch[];
}

const someOhms = (random: Random): number => 10 ** (random.next() * 5 - 1);

/** The same network for the same seed. */
export function randomNetwork(seed: number): ResistorNetwork {
  const random = seededRandom(seed);
  const nodeCount = 2 + random.below(14);
  const branches: DenseBranch[] = [];
  const add = (a: number, b: number) =>
    branches.push({
      a,
      b,
      ohms: someOhms(random),
      volts: random.chance(0.3) ? 1 + random.next() * 27 : 0,
    });
  // a tree first, so that every node is reached, then chords and parallels
  for (let node = 1; node < nodeCount; node++) add(random.below(node), node);
  for (let extra = random.below(2 * nodeCount); extra > 0; extra--) {
    const a = random.below(nodeCount);
    const b = random.below(nodeCount);
    if (a !== b) add(a, b);
  }
  return { nodeCount, branches };
}

/** The network drawn as a job: node n is the splice `Nn`, branch n is `Bn`, a battery or a resistor. */
export function jobOf({ nodeCount, branches }: ResistorNetwork): Job {
  const builder = new CircuitBuilder(24);
  for (let node = 0; node < nodeCount; node++) builder.part("splice", `N${node}`);
  branches.forEach(({ a, b, ohms, volts }, index) => {
    if (volts === 0) {
      builder
        .part("resistor", `B${index}`, { ohms })
        .wire(`N${a}:1 B${index}:1`, `B${index}:2 N${b}:1`);
    } else {
      builder
        .part("battery", `B${index}`, { volts, ohms })
        .wire(`N${a}:1 B${index}:+`, `B${index}:- N${b}:1`);
    }
  });
  return builder.job;
}
