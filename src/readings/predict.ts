import type { Id, Job } from "../job/index.ts";
import { isUnmatched } from "./cavity-pins.ts";
import { impossibleWhen } from "./impossible-when.ts";
import { predictAmps } from "./predict-amps.ts";
import { predictOhms } from "./predict-ohms.ts";
import { predictVolts } from "./predict-volts.ts";
import {
  invalidReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
} from "./prediction.ts";
import { wordsForProbe } from "./setup-words.ts";
import { type Shared, sharedFor } from "./shared.ts";

/** What a meter shows on a machine that is as drawn and in good order, with the band it stays in. */
export const predict = (job: Job, machine: Id, setup: ReadingSetup): Prediction =>
  predictWith(sharedFor(job, machine), setup);

/** The same among other readings of the machine. */
export function predictWith(shared: Shared, setup: ReadingSetup): Prediction {
  const { quantity, red, black, when, with: instrument } = setup;
  const key = JSON.stringify(["reading", quantity, red, black, when, instrument]);
  return shared.once(key, () => predictAfresh(shared, setup));
}

function predictAfresh(shared: Shared, setup: ReadingSetup): Prediction {
  const prediction = asDrawn(shared, setup);
  if (prediction.invalid !== null) return prediction;
  const loose = [setup.red, setup.black].find((probe) => isUnmatched(shared.job, probe));
  return loose === undefined
    ? prediction
    : uncertainReading(
        `No pin is matched to ${wordsForProbe(shared.job, loose)}, so the drawing does not say what is there.`,
      );
}

function asDrawn(shared: Shared, setup: ReadingSetup): Prediction {
  const impossible = impossibleWhen(shared, setup.when);
  if (impossible !== null) return invalidReading(impossible);
  if (setup.when.standIn !== undefined) {
    return uncertainReading("A stand-in is fitted, and what it does is not worked out here.");
  }
  const isLamp = setup.with === "test-lamp";
  switch (setup.quantity) {
    case "volts":
    case "drop":
      return predictVolts(shared, setup);
    case "ohms":
      return isLamp
        ? invalidReading("A test lamp can't measure ohms: use the meter on a dead circuit.")
        : predictOhms(shared, setup);
    case "amps":
      return isLamp
        ? invalidReading(
            "A test lamp can't measure amps: use the meter in place of a removed part.",
          )
        : predictAmps(shared, setup);
  }
}
