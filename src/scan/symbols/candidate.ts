import type { DrawnSymbol } from "./drawn-symbol.ts";
import type { Fit } from "./fit.ts";

/** A symbol that lies on the page somewhere, and how well. */
export interface Candidate {
  readonly symbol: DrawnSymbol;
  readonly fit: Fit;
  /** How well the letter in it reads, 0 to 1; 1 where it needs none. */
  readonly letter: number;
  readonly confidence: number;
  /** The placed part that it looks like. */
  readonly example?: string;
}
