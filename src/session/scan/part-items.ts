import { distance } from "../../base/index.ts";
import type { Id, PartKindName } from "../../job/index.ts";
import { commonShare, type SymbolProposal } from "../../scan/index.ts";
import type { PartShape } from "../diagram/part-shape.ts";

/** How far a proposal is to be believed, in a word. */
export type Sureness = "sure" | "likely" | "maybe";

const SURE = 0.8;
const LIKELY = 0.5;

const surenessOf = (confidence: number): Sureness =>
  confidence >= SURE ? "sure" : confidence >= LIKELY ? "likely" : "maybe";

/** One place on the picture that looks like a part, as the user sees it. */
export interface PartItem {
  readonly id: string;
  readonly proposal: SymbolProposal;
  /** What it would be placed as: what it looks most like, or what the user says. */
  readonly kind: PartKindName;
  /** "sure" once the user has said what it is. */
  readonly sureness: Sureness;
  /** What is to be looked at after placing; null for nothing. */
  readonly caution: string | null;
}

/** What is proposed and neither placed nor left. */
export interface OpenParts {
  readonly items: readonly PartItem[];
  readonly joints: readonly PartItem[];
}

export const NOTHING_OPEN: OpenParts = { items: [], joints: [] };

/** Share of the smaller of two boxes in common at which the one is placed on the other. */
const COVERED = 0.35;

/** A splice this near to a dot, in units of its size, is that dot's. */
const AT_JOINT = 1.5;

/**
 * What of `proposals` is neither placed among `parts` nor left (`left`: ids), as `said`; with `like`
 * only what looks like that placed part. The sure ones first.
 */
export function openParts(
  proposals: readonly SymbolProposal[],
  parts: readonly PartShape[],
  left: ReadonlySet<string>,
  said: ReadonlyMap<string, PartKindName>,
  like: Id | null,
): OpenParts {
  const boxes = parts
    .filter(({ part }) => part.kind !== "splice")
    .map(({ box, part }) => ({ box, isModule: part.kind === "module" }));
  const splices = parts.filter(({ part }) => part.kind === "splice");
  const isPlaced = ({ kind, at, unit, box }: SymbolProposal) =>
    (kind === "splice" &&
      splices.some(({ part }) => distance(at, [part.at[0], part.at[1]]) <= AT_JOINT * unit)) ||
    boxes.some(
      (one) => one.isModule === (kind === "module") && commonShare(one.box, box) >= COVERED,
    );
  const all = proposals.flatMap((proposal, n): PartItem[] => {
    const id = String(n);
    if (left.has(id) || isPlaced(proposal)) return [];
    if (like !== null && proposal.example !== like) return [];
    return [itemOf(id, proposal, said.get(id))];
  });
  const isJoint = ({ kind }: PartItem) => kind === "splice";
  return {
    items: all.filter((one) => !isJoint(one)).sort(inOrder),
    joints: all.filter(isJoint).sort(inOrder),
  };
}

const SURENESSES: readonly Sureness[] = ["sure", "likely", "maybe"];

/** The sure ones first; each kind of sureness from the top of the picture down. */
function inOrder(a: PartItem, b: PartItem): number {
  return (
    SURENESSES.indexOf(a.sureness) - SURENESSES.indexOf(b.sureness) ||
    a.proposal.box.top - b.proposal.box.top
  );
}

function itemOf(id: string, proposal: SymbolProposal, said: PartKindName | undefined): PartItem {
  return {
    id,
    proposal,
    kind: said ?? proposal.kind,
    sureness: said === undefined ? surenessOf(proposal.confidence) : "sure",
    caution: cautionOf(proposal, said ?? proposal.kind),
  };
}

/** What the picture does not say of such a part, or what can't be drawn as it is printed. */
function cautionOf({ isMirrored, pins, ways }: SymbolProposal, kind: PartKindName): string | null {
  if (isMirrored) return "Printed the other way round: check its pins.";
  if (kind === "switch") return "Check its contacts and positions.";
  if (kind === "relay") return "Check which contact is used.";
  if (kind === "inline" && ways !== undefined && ways > 1)
    return `${ways} pins, numbered as they stand: check their marks.`;
  if (kind === "module" && pins)
    return `${pins.length} pins, numbered as they stand: check their marks.`;
  return null;
}
