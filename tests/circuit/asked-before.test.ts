import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { setUp } from "../../src/circuit/index.ts";
import type { Job, When } from "../../src/job/index.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import "../support/seed.ts";

function someWhen(job: Job, random: Random): When {
  const when: When = {};
  for (const part of job.diagram.parts) {
    if (part.kind === "switch" && random.chance(0.5))
      when.switches = { ...when.switches, [part.id]: random.pick(part.positions) };
    else if (random.chance(0.05)) when.removed = [...(when.removed ?? []), part.id];
  }
  if (random.chance(0.3)) when.unplugged = ["A1"];
  if (random.chance(0.2)) when.engine = "running";
  return when;
}

test("the same question has the same answer, to the last bit, whatever was asked before", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const job = randomCircuit(random);
      const whens = Array.from({ length: 20 }, () => someWhen(job, random));
      for (let n = 0; n < 30; n++) {
        const when = random.pick(whens);
        const asked = setUp(job, null, when).settled;
        const fresh = setUp(structuredClone(job), null, structuredClone(when)).settled;
        expect(asked.point.volts).toEqual(fresh.point.volts);
        expect(asked.point.amps).toEqual(fresh.point.amps);
        expect(asked.states).toEqual(fresh.states);
        expect(asked.point.factored.piece).toEqual(fresh.point.factored.piece);
      }
    }),
    { numRuns: 15 },
  );
});
