import type { Id, Job, Reading } from "../job/index.ts";
import type { TakenAt } from "./as-measured.ts";
import { MOST_AMPS, MOST_VOLTS, UNRELATED_OHMS } from "./meter.ts";
import { predictWith } from "./predict.ts";
import {
  invalidReading,
  type JudgedReading,
  type Prediction,
  type ReadingVerdict,
} from "./prediction.ts";
import { type Shared, sharedFor } from "./shared.ts";

/**
 * A reading beside what a healthy machine would show, as drawn, with battery and leads as they were
 * measured on the day of the reading.
 */
export const judgeReading = (job: Job, machine: Id, reading: Reading): JudgedReading =>
  judgeWith(sharedFor(job, machine, takenAt(reading)), reading);

/** When a reading was taken, as far as it says. */
export const takenAt = ({ at }: Reading): TakenAt => (at === undefined ? "unknown" : { at });

/** The same among other readings of the machine. */
export function judgeWith(shared: Shared, reading: Reading): JudgedReading {
  const impossible = impossibleValue(reading);
  const prediction =
    impossible === null ? predictWith(shared, reading) : invalidReading(impossible);
  return { id: reading.id, ...prediction, verdict: verdictOn(reading.value, prediction) };
}

function impossibleValue({ quantity, value, with: instrument }: Reading): string | null {
  if (value === "OL") {
    return quantity === "ohms"
      ? null
      : "OL is an ohms reading: for volts or amps it means beyond the meter's range.";
  }
  switch (quantity) {
    case "ohms":
      return value < 0 ? "No resistance is below zero: there is voltage on the circuit." : null;
    case "amps":
      return Math.abs(value) > MOST_AMPS
        ? `Beyond the meter: it takes ${MOST_AMPS} A at most.`
        : null;
    case "volts":
    case "drop":
      return Math.abs(value) > MOST_VOLTS && instrument !== "test-lamp"
        ? `Beyond the meter: it takes ${MOST_VOLTS} V at most.`
        : null;
  }
}

function verdictOn(value: number | "OL", prediction: Prediction): ReadingVerdict {
  const { predicted, low, high } = prediction;
  if (prediction.invalid !== null) return "invalid";
  if (predicted === null) return "not-comparable";
  if (predicted === "OL") return value === "OL" || value >= UNRELATED_OHMS ? "inside" : "outside";
  if (value === "OL" || low === null || high === null) return "outside";
  return value >= low && value <= high ? "inside" : "outside";
}
