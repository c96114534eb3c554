import { expect } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { checkJob } from "../../src/check/index.ts";
import { type MislaidJob, mislaidJob } from "./mislaid-job.ts";

/** Rules that say for certain what was mistaken at a plug. */
const CERTAIN = ["cavities-swapped", "face-mirrored", "row-off-by-one"];

const MACHINES = 14;
const READINGS = 14;

/**
 * On true machines at whose plug this was mistaken the rule tells it or keeps silent, and none of the
 * others takes it for what it is not. `seed` is that of the first machine.
 */
export function expectToldOrSilent(rule: string, is: MislaidJob["did"]["is"], seed: number): void {
  let found = 0;
  for (let n = 0; n < MACHINES; n++) {
    const { job } = mislaidJob(seededRandom(seed + n), is, READINGS);
    const told = checkJob(job, "M1").findings.filter((one) => CERTAIN.includes(one.rule));
    found += told.length;
    const otherwise = told.filter((one) => one.rule !== rule).map(({ message }) => message);
    expect(otherwise, `seed ${seed + n}`).toEqual([]);
  }
  expect(found).toBeGreaterThan(0);
}
