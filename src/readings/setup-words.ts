import { formatBand, formatQuantity } from "../base/index.ts";
import { type Job, type Probe, splitRef, type When } from "../job/index.ts";
import type { Prediction, ReadingSetup } from "./prediction.ts";

/** A place a probe can touch: `cavity 4`, `A1 pin 4`, `battery +`, `chassis`. */
export function wordsForProbe(job: Job, probe: Probe): string {
  if (probe === "battery+") return "battery +";
  if (probe === "battery-") return "battery −";
  if (probe === "chassis") return "chassis";
  const { owner, name } = splitRef(probe);
  const plug = job.plugs.find((one) => one.id === owner);
  if (!plug) return `${owner} pin ${name}`;
  return job.plugs.length > 1 ? `${owner} cavity ${name}` : `cavity ${name}`;
}

/** What a meter is set to, in words. */
export function wordsForQuantity(setup: Pick<ReadingSetup, "quantity" | "with">): string {
  const words = {
    volts: "volts",
    ohms: "ohms",
    amps: "amps",
    drop: "voltage drop",
  }[setup.quantity];
  return setup.with === "test-lamp" ? `${words} with a test lamp as load` : words;
}

/**
 * The conditions of a reading, a phrase each: `S1 at RUN`, `A1 unplugged`, `battery off`; none
 * when all is at rest and plugged in.
 */
export function phrasesForWhen(job: Job, when: When): string[] {
  const phrases: string[] = [];
  for (const [id, position] of Object.entries(when.switches ?? {})) {
    phrases.push(`${id} at ${position}`);
  }
  for (const id of when.unplugged ?? []) phrases.push(`${id} unplugged`);
  const removed = when.removed ?? [];
  const batteries = job.diagram.parts.filter((part) => part.kind === "battery");
  const isOff = batteries.length > 0 && batteries.every((part) => removed.includes(part.id));
  if (isOff) phrases.push("battery off");
  for (const id of removed) {
    if (!isOff || !batteries.some((part) => part.id === id)) phrases.push(`${id} removed`);
  }
  if (when.engine && when.engine !== "off") phrases.push(`engine ${when.engine}`);
  if (when.standIn) phrases.push(`stand-in ${when.standIn} fitted`);
  return phrases;
}

/** The whole of a reading but its value: `volts, cavity 4 to chassis, S1 at RUN`. */
export function wordsForSetup(job: Job, setup: ReadingSetup): string {
  const probes = `${wordsForProbe(job, setup.red)} to ${wordsForProbe(job, setup.black)}`;
  return [wordsForQuantity(setup), probes, ...phrasesForWhen(job, setup.when)].join(", ");
}

/** What the meter should show: a band, a value, `OL`, or why there is none. */
export function wordsForPrediction(
  prediction: Prediction,
  quantity: ReadingSetup["quantity"],
): string {
  if (prediction.invalid !== null) return "not a valid reading";
  if (prediction.uncertain !== null) return "cannot be told";
  if (prediction.floating) return quantity === "ohms" ? "OL" : "floating, a few ghost volts";
  if (prediction.low !== null && prediction.high !== null) {
    return formatBand(prediction.low, prediction.high, quantity);
  }
  return prediction.predicted === null
    ? "not known"
    : formatQuantity(prediction.predicted, quantity);
}
