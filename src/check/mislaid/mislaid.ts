import type { Reading } from "../../job/index.ts";
import { type Hypothesis, isSameMove } from "./hypothesis.ts";
import type { Separating } from "./separating-reading.ts";
import type { Tally } from "./tally.ts";

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

/** Whether two of the explanations move the very same wires, so that no reading tells them apart. */
export const isOneMove = ({ explained: [one, other] }: Mislaid): boolean =>
  other !== undefined && isSameMove(one.hypothesis, other.hypothesis);
