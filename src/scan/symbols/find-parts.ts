import type { PreparedPage } from "../lines/prepared-page.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { findSymbols, type SymbolSearch } from "./find-symbols.ts";
import { findJointDots } from "./joint-dots.ts";
import type { SymbolProposal } from "./symbol-proposal.ts";

/** Symbols that are less sure do not keep a dot from being seen. */
const STANDS = 0.5;

/** Everything on a page that looks like a part: symbols, the likeliest first, then the dots of joints. */
export function* findParts(page: PreparedPage, search: SymbolSearch): Sliced<SymbolProposal[]> {
  const symbols = yield* asPart(findSymbols(page, search), 0, 0.7);
  const standing = symbols.filter(({ confidence }) => confidence >= STANDS);
  const boxes = [...search.examples, ...standing].map(({ box }) => box);
  const dots = yield* asPart(findJointDots(page, boxes), 0.7, 1);
  return [...symbols, ...dots];
}
