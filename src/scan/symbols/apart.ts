import type { Box } from "../../base/index.ts";
import type { SymbolKind, SymbolProposal } from "./symbol-proposal.ts";

/** A proposal with what decides between it and others at its place. */
export interface Ranked {
  readonly proposal: SymbolProposal;
  /** How closely it lies on the ink, against other ways of drawing the same kind. */
  readonly closeness: number;
  /** Of two kinds at one place the one that explains more ink, if it is about as good. */
  readonly rank: number;
  /** Strokes that it is drawn with. */
  readonly strokes: number;
}

/** Boxes with more of the smaller one in common are the same thing. */
const OVERLAPPING = 0.3;

/** One proposal for each place: the best, and what else it may be, the likeliest first. */
export function onePerPlace(found: readonly Ranked[]): SymbolProposal[] {
  const ofKinds: Ranked[] = [];
  for (const one of [...found].sort((a, b) => b.closeness - a.closeness)) {
    const at = ofKinds.findIndex(
      (other) =>
        other.proposal.kind === one.proposal.kind &&
        other.strokes >= one.strokes &&
        commonShare(other.proposal.box, one.proposal.box) > OVERLAPPING,
    );
    const known = ofKinds[at];
    if (!known) ofKinds.push(one);
    else if (known.proposal.example === undefined && one.proposal.example !== undefined) {
      // Looks like what the trade draws, and like what the user has shown.
      ofKinds[at] = { ...known, proposal: { ...known.proposal, example: one.proposal.example } };
    }
  }
  ofKinds.sort((a, b) => b.rank - a.rank);
  const kept: { proposal: SymbolProposal; others: { kind: SymbolKind; confidence: number }[] }[] =
    [];
  for (const { proposal } of ofKinds) {
    const over = kept.find((one) => commonShare(one.proposal.box, proposal.box) > OVERLAPPING);
    if (!over) kept.push({ proposal, others: [] });
    else if (![over.proposal, ...over.others].some(({ kind }) => kind === proposal.kind)) {
      over.others.push({ kind: proposal.kind, confidence: proposal.confidence });
    }
  }
  return kept.map(({ proposal, others }) => ({
    ...proposal,
    others: others.sort((a, b) => b.confidence - a.confidence).slice(0, MOST_OTHERS),
  }));
}

const MOST_OTHERS = 4;

const areaOf = ({ left, top, right, bottom }: Box): number =>
  Math.max(0, right - left) * Math.max(0, bottom - top);

/** The share of the smaller of two boxes that they have in common. */
export function commonShare(a: Box, b: Box): number {
  const common = areaOf({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  });
  const smaller = Math.min(areaOf(a), areaOf(b));
  return smaller > 0 ? common / smaller : 0;
}
