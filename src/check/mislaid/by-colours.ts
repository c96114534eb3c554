import { type Evidence, isSameColour } from "./evidence.ts";
import { exchange, hypothesesFor } from "./hypotheses.ts";
import { type Hypothesis, isPartOf, movedBy, NOTHING_MOVED } from "./hypothesis.ts";
import type { Explained, Mislaid } from "./mislaid.ts";
import { separatingReading } from "./separating-reading.ts";
import { type Tally, tallyOf } from "./tally.ts";

/** Colours by which a row or a whole face is told to be off, at least: fewer may be chance (our own). */
const LEAST_COLOURS = 3;

/**
 * What makes all colours agree that stand at the wrong cavities, while no reading says otherwise: two
 * cavities that have each other's, a row off by one, the face seen from its other side.
 */
export function byColours(evidence: Evidence, drawn: Tally): Mislaid | null {
  const { job, machine, plug } = evidence;
  const pairs = exchangesIn(evidence);
  // more than one exchange is more than one mistake
  const exchanges = pairs.length > 1 ? [] : pairs;
  const wider = hypothesesFor(plug, []).filter(
    (one) => drawn.coloursDiffer >= 2 && coloursMovedBy(evidence, one) >= LEAST_COLOURS,
  );
  const [best, ...others] = [...exchanges, ...wider]
    .map((hypothesis): Explained => ({ hypothesis, tally: tallyOf(evidence, hypothesis) }))
    .filter(({ hypothesis, tally }) => {
      if (tally.differ > 0) return false;
      return hypothesis.mishap.is === "exchanged" || tally.coloursDiffer === 0;
    })
    .toSorted(
      (a, b) =>
        a.tally.coloursDiffer - b.tally.coloursDiffer ||
        movedBy(a.hypothesis) - movedBy(b.hypothesis),
    );
  if (!best) return null;
  const ties = others.filter(
    ({ hypothesis, tally }) =>
      tally.coloursDiffer === best.tally.coloursDiffer && !isPartOf(best.hypothesis, hypothesis),
  );
  const other = ties[0]?.hypothesis ?? NOTHING_MOVED;
  const separating = separatingReading(job, machine.id, plug.id, [best.hypothesis, other]);
  if (separating === null && best.hypothesis.mishap.is === "exchanged") return null;
  return { sure: "by-colour", explained: [best, ...ties], drawn, odd: [], separating };
}

/** Each two cavities that have the wire drawn at the other. */
function exchangesIn(evidence: Evidence): readonly Hypothesis[] {
  const differing = evidence.colours.flatMap(({ mark, colour }) => {
    const there = evidence.drawnColours(mark);
    const differs = there.length > 0 && !there.some((one) => isSameColour(one, colour));
    return differs ? [{ mark, colour, there }] : [];
  });
  return differing.flatMap((one, at) =>
    differing.slice(at + 1).flatMap((other) => {
      const isCrossed =
        one.there.some((colour) => isSameColour(colour, other.colour)) &&
        other.there.some((colour) => isSameColour(colour, one.colour));
      return isCrossed ? [exchange(one.mark, other.mark)] : [];
    }),
  );
}

/** Colours found at cavities that it moves to where another colour is drawn. */
const coloursMovedBy = (evidence: Evidence, { really }: Hypothesis): number =>
  evidence.colours.filter(({ mark, colour }) => {
    const to = really.get(mark);
    if (to === undefined || to === null || to === mark) return false;
    const there = evidence.drawnColours(to);
    return (
      there.some((one) => isSameColour(one, colour)) &&
      !evidence.drawnColours(mark).some((one) => isSameColour(one, colour))
    );
  }).length;
