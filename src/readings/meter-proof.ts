import type { FirstCheck, Id, Machine, Reading } from "../job/index.ts";
import { judgeCheck, lastCheck, timeOf } from "./first-checks.ts";

/** Whether the readings of a machine were taken with a meter that was proved. */
export interface MeterProof {
  /** `open`: proved before, and not again yet. */
  readonly state: "proved" | "open" | "failed" | "missing";
  /** Ids of readings that no proof stands for. */
  readonly unproved: readonly Id[];
  readonly sentence: string;
}

/**
 * A reading counts as proved where the meter was right on a known source before it and again after
 * it. One without a time stands outside every proof.
 */
export function meterProof(
  machine: Pick<Machine, "readings" | "firstChecks">,
  systemVoltage: number,
): MeterProof {
  const checks = machine.firstChecks ?? [];
  const proofs = checks.filter(({ check }) => check === "meter-before" || check === "meter-after");
  const isGood = (check: FirstCheck) => judgeCheck(check, systemVoltage).good;
  const before = lastCheck(checks, "meter-before");
  const after = lastCheck(checks, "meter-after");
  const unproved = machine.readings
    .filter((reading) => !isProved(reading, proofs, isGood))
    .map(({ id }) => id);
  const many = countOf(unproved);
  if (!before && !after) {
    return {
      state: "missing",
      unproved,
      sentence: `The meter has not been proved on a known source${many === "" ? "." : `: ${many} not proved.`}`,
    };
  }
  const last = [before, after]
    .filter((one) => one !== undefined)
    .reduce((a, b) => (timeOf(b) >= timeOf(a) ? b : a));
  if (!isGood(last)) {
    return {
      state: "failed",
      unproved,
      sentence: `The meter failed its last proof: ${many === "" ? "don’t measure with it." : `${many} not proved. Take them again with a good one.`}`,
    };
  }
  if (!after || last === before) {
    return {
      state: "open",
      unproved,
      sentence: `Prove the meter again after the last reading${many === "" ? "." : `: until then ${many} not proved.`}`,
    };
  }
  return many === ""
    ? { state: "proved", unproved, sentence: "The meter was proved before and after." }
    : { state: "open", unproved, sentence: `Outside the meter’s proofs ${many} not proved.` };
}

/** Between two good proofs that follow each other. */
function isProved(
  reading: Reading,
  proofs: readonly FirstCheck[],
  isGood: (check: FirstCheck) => boolean,
): boolean {
  const at = timeOf(reading);
  if (at === Number.NEGATIVE_INFINITY) return false;
  let earlier: FirstCheck | undefined;
  let later: FirstCheck | undefined;
  for (const proof of proofs) {
    const time = timeOf(proof);
    if (time === Number.NEGATIVE_INFINITY) continue;
    if (time <= at && (!earlier || time >= timeOf(earlier))) earlier = proof;
    if (time >= at && (!later || time < timeOf(later))) later = proof;
  }
  return earlier !== undefined && later !== undefined && isGood(earlier) && isGood(later);
}

const countOf = (ids: readonly Id[]): string =>
  ids.length === 0
    ? ""
    : ids.length <= MOST_NAMED
      ? `${ids.join(", ")} ${ids.length === 1 ? "is" : "are"}`
      : `${ids.length} readings are`;

const MOST_NAMED = 4;
