import { oneFaultGives } from "../../readings/index.ts";
import { cavitiesOf, type Evidence, type Fit, isParted, isPresence } from "./evidence.ts";
import { hypothesesFor } from "./hypotheses.ts";
import { isPartOf, movedBy, NOTHING_MOVED } from "./hypothesis.ts";
import type { Explained, Mislaid } from "./mislaid.ts";
import { separatingReading } from "./separating-reading.ts";
import { type Tally, tallyOf } from "./tally.ts";

/** More odd readings than these say nothing more of single faults. */
const MOST_JOINT = 6;

const SURE_WITH = { one: "or-a-fault", untold: "faults-untried" } as const;

/** What makes the readings agree that are not as drawn. */
export function byReadings(evidence: Evidence, drawn: Tally): Mislaid | null {
  const { job, machine, plug, readings } = evidence;
  const isOdd = (index: number) => drawn.fits[index] === "differs";
  const oddMarks = oddMarksOf(evidence, drawn);
  const hypotheses = hypothesesFor(plug, oddMarks);
  const all = hypotheses.map((hypothesis) => ({
    hypothesis,
    tally: tallyOf(evidence, hypothesis),
  }));
  const possible = all.filter(({ tally }) => tally.differ === 0);
  const full = possible.filter(({ tally }) => isFull(tally, drawn));
  const [best, ...others] = full.toSorted((a, b) => movedBy(a.hypothesis) - movedBy(b.hypothesis));
  if (!best) return null;
  const held = (at: number) => best.tally.fits[at] === "agrees";
  const hasPresence = readings.some(
    ({ reading, judged }, at) => isOdd(at) && held(at) && isPresence(job, reading, judged),
  );
  if (!hasPresence) return null;
  const odd = readings.flatMap(({ reading }, at) => (isOdd(at) ? [reading] : []));
  const fault = oneFaultGives(job, machine.id, odd.slice(0, MOST_JOINT));
  const byColour = best.tally.coloursAgree > drawn.coloursAgree && best.tally.coloursDiffer === 0;
  const isWide = new Set(oddMarks).size >= 2;
  if (fault !== "none" && !byColour && !(fault === "untold" && isWide)) return null;
  const rivals = possible.filter(({ hypothesis }) => !isPartOf(best.hypothesis, hypothesis));
  const isCertain =
    fault === "none" &&
    rivals.length === 0 &&
    isWide &&
    best.tally.coloursDiffer <= drawn.coloursDiffer;
  const ties = others.filter(({ hypothesis }) => !isPartOf(best.hypothesis, hypothesis));
  const tie: readonly Explained[] = ties.length > 0 ? ties : rivals;
  const told = tie[0]?.hypothesis ?? NOTHING_MOVED;
  return {
    sure: fault !== "none" ? SURE_WITH[fault] : isCertain ? "certain" : "tied",
    explained: [best, ...tie],
    drawn,
    odd,
    separating: isCertain
      ? null
      : separatingReading(job, machine.id, plug.id, [best.hypothesis, told]),
  };
}

/** Marks at which the loom by itself is not as drawn; with the module plugged in any other may follow. */
function oddMarksOf(evidence: Evidence, { fits }: Tally): readonly string[] {
  const { plug, readings, pinAt } = evidence;
  const odd = readings.filter((_, at) => fits[at] === "differs").map(({ reading }) => reading);
  const pins = [...pinAt.values()];
  const bare = odd.filter(({ when }) => isParted(evidence, pins, when));
  const those = bare.length > 0 ? bare : odd;
  return [...new Set(those.flatMap((reading) => cavitiesOf(plug, reading)))];
}

/** Everything that could be compared as drawn agrees, and so does what did not. */
function isFull({ fits }: Tally, drawn: Tally): boolean {
  const isGood = (fit: Fit | undefined) => fit === "agrees" || fit === "hangs-free";
  return drawn.fits.every((before, at) => before === "no-word" || isGood(fits[at]));
}
