import { FUSE_TIMES } from "../../circuit/index.ts";
import type { Id, Job, Reading } from "../../job/index.ts";
import { judgeWith, takenAt } from "../judge-reading.ts";
import { GHOST_SHARE, METER_ERROR, SHUNT_OHMS, UNRELATED_OHMS } from "../meter.ts";
import { predictWith } from "../predict.ts";
import type { Prediction } from "../prediction.ts";
import { type Shared, sharedFor } from "../shared.ts";
import type { Candidate } from "./candidate.ts";
import { candidatesFor } from "./candidates.ts";
import type { Explanation, FaultSpot, Reach } from "./explanation.ts";
import { reachOfFaults } from "./fault-reach.ts";
import { faultWords } from "./fault-words.ts";
import { type Feels, feelsOf, type Need } from "./feels.ts";
import { type FaultTrial, faultTrial, type Shown } from "./trial-fault.ts";

/** Spots after which nothing less likely is tried any more. */
const ENOUGH = 6;
/** Share of what a reading lies off by that a fault must move it to be named (our own). */
const WORTH_NAMING = 0.5;
/** Share of a value by which parts of a faulty machine may shift it (our own). */
const SHIFT = 0.05;
/** Volts of a point that nothing but the meter holds. */
const NOTHING = 1e-6;
/** Ω of leads, contacts and a few wires that may lie beside what a fault leaves (common practice, no source). */
const JOINTS_OHMS = 1.5;

/**
 * What single fault could give a reading that lies off its prediction, or that none can. A reading
 * that is as predicted, or not comparable for something that nobody has said, is explained by nothing.
 */
export const explainReading = (job: Job, machine: Id, reading: Reading): Explanation | null =>
  explainWith(sharedFor(job, machine, takenAt(reading)), reading);

function explainWith(shared: Shared, reading: Reading): Explanation | null {
  const prediction = predictWith(shared, reading);
  if (!isOff(shared, reading, prediction)) return null;
  const { value } = reading;
  const reach = value === "OL" ? null : reachOfFaults(shared, reading, value);
  const contradicts = reach !== null && isBeyond(reach, reading);
  const trial = contradicts ? null : faultTrial(shared, reading);
  const spots = trial ? spotsOf(shared, reading, prediction, trial) : [];
  return {
    verdict: contradicts ? "contradicts" : spots.length > 0 ? "explained" : "unnamed",
    spots,
    reach,
    isReversed: isReversed(reading, prediction),
  };
}

/** Whether there is anything to explain: a comparable value off its band, or volts where none should stand. */
function isOff(shared: Shared, reading: Reading, { floating }: Prediction): boolean {
  const { verdict } = judgeWith(shared, reading);
  if (verdict === "outside") return true;
  const { value } = reading;
  return floating && value !== "OL" && Math.abs(value) > GHOST_SHARE * shared.job.systemVoltage;
}

/** Surely outside what one fault can give; `OL` never is. */
function isBeyond({ low, high, untold }: Reach, { value, quantity }: Reading): boolean {
  if (value === "OL" || untold !== null) return false;
  const { share, digits } = METER_ERROR[quantity];
  const error = Math.abs(value) * share + digits;
  return value > high + error || value < low - error;
}

function isReversed({ value, quantity }: Reading, { predicted, low, high }: Prediction): boolean {
  if (quantity === "ohms" || typeof value !== "number" || typeof predicted !== "number")
    return false;
  // about nothing at all either way round
  if (low === null || high === null || (low <= 0 && high >= 0)) return false;
  return -value >= low && -value <= high;
}

function spotsOf(
  shared: Shared,
  reading: Reading,
  prediction: Prediction,
  trial: FaultTrial,
): readonly FaultSpot[] {
  const need = needToName(reading, prediction, trial);
  const feels = feelsOf(trial, need, reading.quantity === "ohms");
  return spotsAmong(shared, reading, prediction, trial, feels, ENOUGH);
}

/** The likeliest faults that give the reading, of those that it `feels`: of all where null. */
export function spotsAmong(
  shared: Shared,
  reading: Reading,
  prediction: Prediction,
  trial: FaultTrial,
  feels: Feels | null,
  enough: number,
): readonly FaultSpot[] {
  const found: FaultSpot[] = [];
  for (const candidate of candidatesFor(shared, reading, trial, feels)) {
    if (found.length >= enough) break;
    const shown = trial.with(candidate.harm);
    const most = shown.blown.length > 0 ? beforeItBlows(candidate, trial, shown) : shown;
    const fits =
      fitOf(candidate, reading, prediction, shown, shared) ??
      (isPartOf(candidate, reading, prediction, most) ? "partly" : null);
    if (fits === null) continue;
    const { members, between, to, likelihood } = candidate;
    const isPartial = fits === "partly";
    const mode = isPartial ? (candidate.partly ?? candidate.mode) : candidate.mode;
    found.push({
      mode,
      members,
      between,
      to,
      inFull: shown.value,
      isPartial,
      blows: isPartial ? [] : shown.blown,
      likelihood,
      words: faultWords(candidate, isPartial),
    });
  }
  return found;
}

/** How far a fault must move what the meter shows to be worth naming. */
export function needToName(
  { value, quantity }: Reading,
  { low, high }: Prediction,
  { sound }: FaultTrial,
): Need {
  if (quantity === "ohms") {
    const [now, own] = [asOhms(sound.value), asOhms(value)];
    return { by: Math.abs(own - now) * WORTH_NAMING, way: own < now ? -1 : 1 };
  }
  const now = typeof sound.value === "number" ? sound.value : 0;
  const own = value === "OL" ? now : value;
  const off = own > now ? own - Math.max(now, high ?? now) : Math.min(now, low ?? now) - own;
  const volts = quantity === "amps" ? off * SHUNT_OHMS : off;
  return { by: volts * WORTH_NAMING, way: own > now ? 1 : -1 };
}

/** What it shows with as much touching as the fuse still bears. */
function beforeItBlows({ through }: Candidate, trial: FaultTrial, { blown }: Shown): Shown | null {
  if (!through) return null;
  const { branches, systemVoltage } = trial.healthy.wiring;
  const law = branches.find(({ owner }) => owner === blown[0])?.element?.law;
  return law?.is === "protection"
    ? trial.with(through(systemVoltage / (FUSE_TIMES * law.amps)))
    : null;
}

/** Above this unrelated circuits count as open: any more says nothing more. */
const asOhms = (one: number | "OL" | null): number =>
  one === "OL" || one === null || one >= UNRELATED_OHMS ? UNRELATED_OHMS : one;

/** Whether the fault in full gives the value. */
function fitOf(
  { mode, pinned }: Candidate,
  { value, quantity }: Reading,
  { low, high }: Prediction,
  shown: Shown,
  { job: { systemVoltage } }: Shared,
): "fully" | null {
  if (quantity === "ohms") {
    const full = asOhms(shown.value);
    return Math.abs(asOhms(value) - full) <= near(full, quantity) + JOINTS_OHMS ? "fully" : null;
  }
  if (value === "OL" || shown.value === "OL") return null;
  const full = shown.value ?? 0;
  // an open leaves the point to the meter alone: ghost volts
  const isLoose = mode === "open" || mode === "stuck-open";
  const ghost = isLoose && Math.abs(full) < NOTHING ? GHOST_SHARE * systemVoltage : 0;
  // a good machine's own spread counts where the fault moves the reading little
  const spread = low !== null && high !== null ? (high - low) / 2 : 0;
  const slack = near(full, quantity) + ghost + Math.min(spread, Math.abs(full) * 0.3);
  // how much of a short's volts its wires take nobody knows
  return isBetween(value, [full, pinned ?? full], slack) ? "fully" : null;
}

/**
 * Whether it gives the value in part, its ohms being free. With one resistance that grows or falls
 * from healthy to all there is, what the meter shows goes from the one to the other and never beyond.
 */
function isPartOf(
  { partly }: Candidate,
  { value, quantity }: Reading,
  { low, high, predicted }: Prediction,
  most: Shown | null,
): boolean {
  if (partly === null || most === null) return false;
  if (quantity === "ohms") {
    const sound = predicted === "OL" ? [UNRELATED_OHMS] : [low ?? 0, high ?? 0];
    const own = asOhms(value);
    return isBetween(own, [...sound, asOhms(most.value)], near(own, quantity));
  }
  if (value === "OL" || most.value === "OL") return false;
  const full = most.value ?? 0;
  return isBetween(value, [low ?? 0, high ?? 0, full], near(full, quantity));
}

const near = (value: number, quantity: Reading["quantity"]): number => {
  const { share, digits } = METER_ERROR[quantity];
  return Math.abs(value) * (share + SHIFT) + digits;
};

const isBetween = (value: number, ends: readonly number[], slack: number): boolean =>
  value >= Math.min(...ends) - slack && value <= Math.max(...ends) + slack;
