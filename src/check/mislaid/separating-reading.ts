import { type CavityRef, cavityRef, type Id, type Job } from "../../job/index.ts";
import {
  cautionsFor,
  expectedAt,
  type Prediction,
  predict,
  type ReadingSetup,
  wordsForPrediction,
  wordsForSetup,
} from "../../readings/index.ts";
import { type Move, reallyAt } from "./hypothesis.ts";

/** A reading that shows one thing if the one is so and another if the other is. */
export interface Separating {
  readonly setup: ReadingSetup;
  readonly one: Prediction;
  readonly other: Prediction;
}

/** Share of system voltage by which two readings must lie apart. */
const APART = 0.25;

/** The first reading worth taking that separates the two; null where none does. */
export function separatingReading(
  job: Job,
  machine: Id,
  plug: Id,
  [one, other]: readonly [Move, Move],
): Separating | null {
  const marks = new Set([...one.really.keys(), ...other.really.keys()]);
  for (const mark of marks) {
    const places = new Set(
      [mark, one.really.get(mark), other.really.get(mark)].flatMap((to) => to ?? []),
    );
    if (one.really.get(mark) === other.really.get(mark)) continue;
    for (const place of places) {
      for (const setup of setupsAt(job, machine, cavityRef(plug, place))) {
        const here = atMark(setup, cavityRef(plug, place), cavityRef(plug, mark));
        const shown = [one, other].map((move) => shownIf(job, machine, plug, move, here));
        const [first, second] = shown;
        if (first && second && isApart(job, first, second))
          return { setup: here, one: first, other: second };
      }
    }
  }
  return null;
}

/** Those without a test lamp first: it is a load. */
const setupsAt = (job: Job, machine: Id, cavity: CavityRef): readonly ReadingSetup[] =>
  expectedAt(job, machine, cavity)
    .map(({ setup }) => setup)
    .toSorted((a, b) => Number(a.with !== undefined) - Number(b.with !== undefined));

const atMark = (setup: ReadingSetup, from: string, to: string): ReadingSetup => ({
  ...setup,
  red: setup.red === from ? to : setup.red,
  black: setup.black === from ? to : setup.black,
});

function shownIf(job: Job, machine: Id, plug: Id, move: Move, setup: ReadingSetup) {
  const red = reallyAt(plug, move, setup.red);
  const black = reallyAt(plug, move, setup.black);
  return red === null || black === null ? null : predict(job, machine, { ...setup, red, black });
}

/** Whether what a meter shows surely differs, so that nobody takes the one for the other. */
function isApart({ systemVoltage }: Job, a: Prediction, b: Prediction): boolean {
  const isSure = ({ invalid, uncertain }: Prediction) => invalid === null && uncertain === null;
  if (!isSure(a) || !isSure(b)) return false;
  const least = (one: Prediction): readonly [number, number] | "OL" | "free" =>
    one.floating ? "free" : one.predicted === "OL" ? "OL" : [one.low ?? 0, one.high ?? 0];
  const [one, other] = [least(a), least(b)];
  if (one === "OL" || other === "OL") {
    const band = one === "OL" ? other : one;
    return one !== other && typeof band !== "string" && band[1] < 2500;
  }
  if (one === "free" || other === "free") {
    const band = one === "free" ? other : one;
    if (typeof band === "string") return false;
    return Math.min(Math.abs(band[0]), Math.abs(band[1])) > 2 * APART * systemVoltage;
  }
  const gap = Math.max(one[0] - other[1], other[0] - one[1]);
  return gap > Math.max(2, APART * Math.max(Math.abs(one[1]), Math.abs(other[1])));
}

/** `Volts, cavity 3 to chassis, A1 unplugged shows ...`: which of the two is so. */
export function settledBy(
  job: Job,
  { setup, one, other }: Separating,
  [ifOne, ifOther]: readonly [string, string],
): string {
  const shows = (prediction: Prediction) => wordsForPrediction(prediction, setup.quantity);
  return `What settles it: ${wordsForSetup(job, setup)}. It shows ${shows(one)} ${ifOne}, ${shows(other)} ${ifOther}. ${cautionsFor(setup).join(" ")}`;
}
