import { circuitOf, type Spread } from "../circuit/index.ts";
import type { FirstCheck, Id, Job, Part } from "../job/index.ts";
import { isRestVolts, lastCheck, timeOf } from "./first-checks.ts";
import { LEADS_OHMS } from "./meter.ts";

/** What the first checks of a machine change in what its readings should be. */
export interface AsMeasured {
  /** The job with the battery's volts as measured, or the very job that came in. */
  readonly job: Job;
  /** Within which the battery's volts lie while readings are taken; null when nobody measured them. */
  readonly battery: Spread | null;
  /** Ω of both leads together; null when nobody measured them. */
  readonly leads: number | null;
}

/**
 * Shares of the volts measured at rest that they may have fallen or risen by when the reading is
 * taken: the key has been on for a while, or somebody measured under a small load (common
 * practice, no source).
 */
const SINCE_THEN: Spread = [0.97, 1.01];

/** What was measured first, as far as it stands for a reading. */
export interface Measures {
  /** Battery volts at rest; null when nobody measured them. */
  readonly rest: number | null;
  /** Ω of both leads together; null when nobody measured them. */
  readonly leads: number | null;
}

/** Hours before a reading that a check still stands for it: the same day's work. */
const HOURS_BEFORE = 16;
/** A check made this long after counts too: who measures does not always begin with it. */
const HOURS_AFTER = 1;
const HOUR = 3_600_000;

/**
 * When a reading is or was taken: an ISO 8601 time; `now` for one yet to be taken, by the latest
 * checks; `unknown` for one without a time, for which no check stands: since then the battery may
 * have been charged, or changed.
 */
export type TakenAt = { readonly at: string } | "now" | "unknown";

/** The checks of a machine that stand for a reading taken at a time. */
export function measuresAt(checks: readonly FirstCheck[], taken: TakenAt): Measures {
  const standing = (check: FirstCheck): boolean => {
    if (taken === "now") return true;
    if (taken === "unknown") return false;
    const hours = (timeOf(taken) - timeOf(check)) / HOUR;
    return hours <= HOURS_BEFORE && hours >= -HOURS_AFTER;
  };
  const own = checks.filter(standing);
  return {
    rest: lastCheck(own, "battery-at-rest")?.value ?? null,
    leads: goodLeads(lastCheck(own, "leads-together")?.value ?? null),
  };
}

/** Leads that failed their check are cleaned or changed, and say nothing of those that follow. */
const goodLeads = (ohms: number | null): number | null =>
  ohms !== null && ohms >= 0 && ohms <= LEADS_OHMS ? ohms : null;

/** Takes battery and leads as they were measured on this machine, where that can be used. */
export function asMeasured(job: Job, machine: Id, { rest, leads }: Measures): AsMeasured {
  if (rest === null || !isUsable(job, machine, rest)) return { job, battery: null, leads };
  return {
    job: withBattery(job, rest),
    battery: [rest * SINCE_THEN[0], rest * SINCE_THEN[1]],
    leads,
  };
}

/**
 * With one battery only: of several nobody can say which was measured. Volts of a flat or of a
 * charging battery are no measure of a healthy machine: the usual limits stay.
 */
const isUsable = (job: Job, machine: Id, volts: number): boolean =>
  hasOneBattery(job, machine) && isRestVolts(volts, job.systemVoltage);

const hasOneBattery = (job: Job, machine: Id): boolean =>
  circuitOf(job, machine).parts.filter(({ kind }) => kind === "battery").length === 1;

/** Whether readings go by the battery as it was measured, one sentence; null while it was not. */
export function batteryUse(job: Job, machine: Id): string | null {
  const checks = job.machines.find(({ id }) => id === machine)?.firstChecks ?? [];
  const { rest } = measuresAt(checks, "now");
  if (rest === null) return null;
  if (isUsable(job, machine, rest))
    return "What a healthy machine shows on this day goes by these volts.";
  return hasOneBattery(job, machine)
    ? "What a healthy machine shows does not go by these volts."
    : "Readings do not go by these volts: only with one battery in the diagram is it sure which was measured.";
}

function withBattery(job: Job, volts: number): Job {
  const measured = (parts: readonly Part[]): Part[] =>
    parts.map((part) => (part.kind === "battery" ? { ...part, volts } : part));
  const parts = measured(job.diagram.parts);
  return Object.freeze({
    ...job,
    diagram: Object.freeze({ ...job.diagram, parts: Object.freeze(parts) as Part[] }),
    machines: job.machines.map((one) =>
      one.changes?.some(({ parts }) => parts?.some(({ kind }) => kind === "battery"))
        ? {
            ...one,
            changes: one.changes.map((change) =>
              change.parts ? { ...change, parts: measured(change.parts) } : change,
            ),
          }
        : one,
    ),
  });
}
