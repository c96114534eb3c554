import { formatQuantity } from "../base/index.ts";
import type { FIRST_CHECKS, FirstCheck } from "../job/index.ts";
import {
  BCI_CELSIUS,
  chargeAtRest,
  LOAD_TEST_CELSIUS,
  leastUnderLoad,
  restVolts,
} from "../standards/index.ts";
import { LEADS_OHMS } from "./meter.ts";

/** Which of the checks that come before any reading. */
export type CheckName = (typeof FIRST_CHECKS)[number];

/** What one check came to. */
export interface CheckVerdict {
  readonly good: boolean;
  /** One sentence, or two where the second is what to do. */
  readonly sentence: string;
  /** Per cent of charge, 0 to 100; of the battery at rest only. */
  readonly charge?: number;
}

/** The latest check of its name by its time; of those without one, the last kept. */
export function lastCheck(checks: readonly FirstCheck[], name: CheckName): FirstCheck | undefined {
  let last: FirstCheck | undefined;
  for (const one of checks) {
    if (one.check === name && (!last || timeOf(one) >= timeOf(last))) last = one;
  }
  return last;
}

/** Milliseconds; −∞ for a check or reading with no time or none that can be read. */
export function timeOf({ at }: { readonly at?: string | undefined }): number {
  const time = at === undefined ? Number.NaN : Date.parse(at);
  return Number.isNaN(time) ? Number.NEGATIVE_INFINITY : time;
}

/** What a check says of battery, meter or leads. `value` in volts; ohms of the leads. */
export function judgeCheck(
  check: Pick<FirstCheck, "check" | "value" | "known" | "celsius">,
  systemVoltage: number,
): CheckVerdict {
  switch (check.check) {
    case "battery-at-rest":
      return judgeRest(check, systemVoltage);
    case "battery-under-load":
      return judgeLoad(check, systemVoltage);
    case "meter-before":
    case "meter-after":
      return judgeMeter(check);
    case "leads-together":
      return judgeLeads(check.value);
  }
}

/** Per cent below which a battery is charged before anything is measured (common practice, no source). */
const ENOUGH_CHARGE = 50;
/** Above the table's full charge by more than this share: it is being charged, or just was. */
const SURFACE_CHARGE = 0.02;

/** Whether a battery at rest can have these volts and be good: neither flat nor on charge. */
export const isRestVolts = (value: number, systemVoltage: number): boolean =>
  value >= restVolts(0, systemVoltage) && value <= highestAtRest(systemVoltage);

const highestAtRest = (systemVoltage: number): number =>
  restVolts(100, systemVoltage) * (1 + SURFACE_CHARGE);

function judgeRest(
  { value, celsius }: Pick<FirstCheck, "value" | "celsius">,
  systemVoltage: number,
): CheckVerdict {
  const flat = restVolts(0, systemVoltage);
  const charge = chargeAtRest(value, systemVoltage);
  const percent = `${Math.round(charge / 5) * 5} %`;
  const cold =
    celsius !== undefined && Math.abs(celsius - BCI_CELSIUS) > 5
      ? ` At ${celsius} °C: the table is for ${BCI_CELSIUS} °C, and nothing is corrected here.`
      : "";
  if (value > highestAtRest(systemVoltage)) {
    return {
      good: false,
      charge,
      sentence: `Above full charge: it is being charged or just was. Let it rest and measure again.${cold}`,
    };
  }
  if (value < flat) {
    return {
      good: false,
      charge,
      sentence: `Flat, or not good: below ${volts(flat)}. Charge and test it before any reading counts.${cold}`,
    };
  }
  return charge >= ENOUGH_CHARGE
    ? { good: true, charge, sentence: `About ${percent} charged.${cold}` }
    : {
        good: false,
        charge,
        sentence: `About ${percent} charged: charge it first, or every reading is low.${cold}`,
      };
}

function judgeLoad(
  { value, celsius }: Pick<FirstCheck, "value" | "celsius">,
  systemVoltage: number,
): CheckVerdict {
  const least = leastUnderLoad(systemVoltage);
  const cold =
    celsius !== undefined && celsius < LOAD_TEST_CELSIUS - 5
      ? ` At ${celsius} °C it holds less than at ${LOAD_TEST_CELSIUS} °C, which the limit is for.`
      : "";
  return value >= least
    ? { good: true, sentence: `Holds ${volts(least)} or more under load.${cold}` }
    : {
        good: false,
        sentence: `Below ${volts(least)} under load: charge it and test again, else change it.${cold}`,
      };
}

/** What a proof may be off: a share of the known volts and a few digits (common practice, no source). */
const PROOF_SHARE = 0.02;
const PROOF_DIGITS = 0.05;

function judgeMeter({ value, known }: Pick<FirstCheck, "value" | "known">): CheckVerdict {
  if (known === undefined || known === 0) {
    return { good: false, sentence: "Say how many volts the known source has." };
  }
  const off = value - known;
  return Math.abs(off) <= Math.abs(known) * PROOF_SHARE + PROOF_DIGITS
    ? { good: true, sentence: `The meter shows the known ${volts(known)}.` }
    : {
        good: false,
        sentence: `The meter is ${volts(Math.abs(off))} ${off > 0 ? "above" : "below"} the known ${volts(known)}: don’t trust it.`,
      };
}

const judgeLeads = (ohms: number): CheckVerdict =>
  ohms <= LEADS_OHMS
    ? { good: true, sentence: `The leads have ${formatQuantity(ohms, "ohms")} of their own.` }
    : {
        good: false,
        sentence: `${formatQuantity(ohms, "ohms")} is too much for leads: clean the tips or change them.`,
      };

const volts = (value: number) => formatQuantity(Number(value.toFixed(2)), "volts");
