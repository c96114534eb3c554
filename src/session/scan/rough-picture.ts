import type { Traced } from "../../scan/index.ts";

/** Fewer doubtful places than this are soon looked at, whatever picture they are on. */
const MANY = 12;
/**
 * Doubtful places for every pin that lines come to: far more than made pages ask that are barely legible, one
 * in forty joins (docs/line-following.md).
 */
const PER_PIN = 1 / 3;

/** Whether a picture leaves so much open that a better one is sooner taken than its questions answered. */
export function isRough({
  nets,
  questions,
  isTooRough,
}: {
  readonly nets: readonly Pick<Traced["nets"][number], "terminals">[];
  readonly questions: Traced["questions"];
  readonly isTooRough: boolean;
}): boolean {
  const pins = nets.reduce((sum, { terminals }) => sum + terminals.length, 0);
  return isTooRough || (questions.length >= MANY && questions.length > PER_PIN * pins);
}
