import type { Box, Point } from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { traceLines } from "../trace.ts";
import { commonShare } from "./apart.ts";
import type { SymbolProposal } from "./symbol-proposal.ts";

/**
 * Half the largest disc of solid ink at a joint, in line widths, and how surely it is a dot: plain lines
 * that meet have 0.7, the smallest dots drawn 1.25. In between in a straight line.
 */
const SHARES: readonly (readonly [solid: number, sure: number])[] = [
  [0.85, 0],
  [1, 0.4],
  [1.17, 0.8],
  [1.4, 0.95],
];
/** Dots are no larger than this, in line widths: larger ones are symbols of their own. */
const LARGEST = 4;
/** A place that the picture leaves open, and that looks more like a dot than like a crossing. */
const OPEN = 0.55;
/** Line widths about a joint within which its dot's middle lies. */
const REACH = 1.5;
/** Radius of a splice as it is drawn, symbol units. */
const RADIUS = 0.4;

/**
 * Dots at which lines are joined, as splices, at the very places where tracing joins them. `parts`: boxes
 * of what stands on the page, pixels of the picture; within them nothing is looked for.
 */
export function* findJointDots(
  page: PreparedPage,
  parts: readonly Box[],
): Sliced<SymbolProposal[]> {
  const context = { parts, words: [], answers: [] };
  const { nets, questions } = yield* asPart(traceLines(page, context, {}, "all"), 0, 0.95);
  const found: SymbolProposal[] = [];
  for (const { nodes, runs } of nets) {
    const ends = nodes.map(() => 0);
    for (const node of runs.flatMap(({ from, to }) => [from, to])) {
      ends[node] = (ends[node] as number) + 1;
    }
    nodes.forEach(({ at }, n) => {
      if ((ends[n] as number) < 3) return;
      const solid = solidAt(page, at);
      if (solid <= LARGEST) found.push(dotAt(page, at, solid, sureOf(solid)));
    });
  }
  for (const { kind, at, isLikelier } of questions) {
    if (kind !== "dot" || isLikelier !== "joined") continue;
    found.push(dotAt(page, at, solidAt(page, at), OPEN));
  }
  yield 1;
  return found.filter(
    ({ box, confidence }) => confidence > 0 && parts.every((part) => commonShare(part, box) === 0),
  );
}

function dotAt(page: PreparedPage, at: Point, solid: number, confidence: number): SymbolProposal {
  const radius = (solid * page.lineWidth) / page.scale;
  return {
    kind: "splice",
    box: {
      left: at[0] - radius,
      top: at[1] - radius,
      right: at[0] + radius,
      bottom: at[1] + radius,
    },
    at,
    turn: 0,
    unit: radius / RADIUS,
    confidence,
    ends: [at],
    others: [],
  };
}

/** Half the largest disc of solid ink at a place of the picture, in line widths. */
function solidAt({ far, ink, scale, lineWidth }: PreparedPage, [x, y]: Point): number {
  const [middleX, middleY] = [Math.round(x * scale - 0.5), Math.round(y * scale - 0.5)];
  const reach = Math.ceil(REACH * lineWidth);
  let most = 0;
  for (let py = Math.max(0, middleY - reach); py <= middleY + reach && py < ink.height; py++) {
    for (let px = Math.max(0, middleX - reach); px <= middleX + reach && px < ink.width; px++) {
      most = Math.max(most, far[py * ink.width + px] as number);
    }
  }
  return most / STEPS_PER_PIXEL / lineWidth;
}

function sureOf(solid: number): number {
  const at = SHARES.findIndex(([to]) => to >= solid);
  if (at === 0) return 0;
  const [to, sure] = SHARES[at] ?? [Number.POSITIVE_INFINITY, 0.95];
  const [from, before] = SHARES[at - 1] ?? [0, 0.95];
  return before + ((sure - before) * Math.min(1, solid - from)) / Math.max(1e-9, to - from);
}
