import type { Finding } from "../check/index.ts";
import type { OrderedFinding } from "./finding-order.ts";

/** Whether it tells of a part none of whose pins has a wire. */
export const isWiredToNothing = ({ rule, subjects, setAside }: Finding): boolean =>
  rule === "loose-end" && subjects.length === 1 && setAside === undefined;

/** Findings that say the same of one thing each, listed as one row that unfolds. */
export interface FoldedFindings {
  readonly key: string;
  readonly members: readonly OrderedFinding[];
}

export type FindingRow = OrderedFinding | FoldedFindings;

export const isFolded = (row: FindingRow): row is FoldedFindings => "members" in row;

/** So many of them stand each by itself. */
const FEW = 3;

/**
 * The rows of a list of findings: while a drawing is half traced, the parts that no wire comes to yet are
 * one row at the place of the first of them.
 */
export function findingRows(findings: readonly OrderedFinding[]): readonly FindingRow[] {
  const members = findings.filter(({ finding }) => isWiredToNothing(finding));
  if (members.length <= FEW) return findings;
  const folded: FoldedFindings = { key: "parts wired to nothing", members };
  return findings.flatMap((one): readonly FindingRow[] =>
    one === members[0] ? [folded] : isWiredToNothing(one.finding) ? [] : [one],
  );
}
