import type { Reading } from "../../job/index.ts";
import { oneFaultGives } from "../../readings/index.ts";
import {
  cavitiesOf,
  type Evidence,
  type Fit,
  isParted,
  isPresence,
  isSameColour,
} from "./evidence.ts";
import { exchange, hypothesesFor } from "./hypotheses.ts";
import { type Hypothesis, isSameMove, movedBy, NOTHING_MOVED } from "./hypothesis.ts";
import { type Separating, separatingReading } from "./separating-reading.ts";
import { asDrawn, type Tally, tallyOf } from "./tally.ts";

/** A hypothesis with what agrees under it. */
export interface Explained {
  readonly hypothesis: Hypothesis;
  readonly tally: Tally;
}

/** What may have been mistaken at a plug. */
export interface Mislaid {
  /**
   * `certain`: nothing but this one makes everything agree. `tied`: several do, or too little was
   * read to be sure. `or-a-fault`: one fault could give the readings as well, and the colours speak
   * for this. `faults-untried`: whether one could is not worked out. `by-colour`: the colours alone
   * speak for it.
   */
  readonly sure: "certain" | "tied" | "or-a-fault" | "faults-untried" | "by-colour";
  /** All that make everything agree, the smallest first. */
  readonly explained: readonly [Explained, ...Explained[]];
  readonly drawn: Tally;
  /** Readings that are not as drawn. */
  readonly odd: readonly Reading[];
  /** What separates the first from the second, or from the drawing; null where nothing was found that does. */
  readonly separating: Separating | null;
}

/** More odd readings than these say nothing more of single faults. */
const MOST_JOINT = 6;

/** What was mistaken at this plug; null where nothing speaks for it. */
export function mislaidAt(evidence: Evidence): Mislaid | null {
  const drawn = asDrawn(evidence);
  const odd = evidence.readings.filter((_, index) => drawn.fits[index] === "differs");
  return odd.length > 0 ? byReadings(evidence, drawn) : byColours(evidence, drawn);
}

const SURE_WITH = { one: "or-a-fault", untold: "faults-untried" } as const;

function byReadings(evidence: Evidence, drawn: Tally): Mislaid | null {
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

/** Whether the second only says the same of more cavities: a row, and the whole plug it is in. */
function isPartOf(one: Hypothesis, other: Hypothesis): boolean {
  if (one === other) return true;
  const [row, whole] = [one.mishap, other.mishap];
  if (row.is !== "shifted" || whole.is !== "shifted" || row.by !== whole.by) return false;
  return row.row.every((mark) => whole.row.includes(mark));
}

/** Everything that could be compared as drawn agrees, and so does what did not. */
function isFull({ fits }: Tally, drawn: Tally): boolean {
  const isGood = (fit: Fit | undefined) => fit === "agrees" || fit === "hangs-free";
  return drawn.fits.every((before, at) => before === "no-word" || isGood(fits[at]));
}

/** Two cavities whose colours are each other's, while no reading says otherwise. */
function byColours(evidence: Evidence, drawn: Tally): Mislaid | null {
  const { job, machine, plug, colours, pinAt } = evidence;
  const drawnAt = (mark: string) => {
    const pin = pinAt.get(mark);
    return pin === undefined ? [] : evidence.drawnAt(pin).flatMap((wire) => wire.colour ?? []);
  };
  const differing = colours.flatMap(({ mark, colour }) => {
    const there = drawnAt(mark);
    const differs = there.length > 0 && !there.some((one) => isSameColour(one, colour));
    return differs ? [{ mark, colour, there }] : [];
  });
  const pairs = differing.flatMap((one, at) =>
    differing
      .slice(at + 1)
      .filter(
        (other) =>
          other.there.some((colour) => isSameColour(colour, one.colour)) &&
          one.there.some((colour) => isSameColour(colour, other.colour)),
      )
      .map((other) => exchange(one.mark, other.mark)),
  );
  const [only, another] = pairs;
  if (!only || another) return null;
  const tally = tallyOf(evidence, only);
  if (tally.differ > 0) return null;
  const separating = separatingReading(job, machine.id, plug.id, [only, NOTHING_MOVED]);
  if (separating === null) return null;
  return {
    sure: "by-colour",
    explained: [{ hypothesis: only, tally }],
    drawn,
    odd: [],
    separating,
  };
}

/** Whether two of the explanations move the very same wires, so that no reading tells them apart. */
export const isOneMove = ({ explained: [one, other] }: Mislaid): boolean =>
  other !== undefined && isSameMove(one.hypothesis, other.hypothesis);
