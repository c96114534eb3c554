import {
  add,
  type Box,
  boxAt,
  distance,
  type Point,
  scale as scaled,
  subtract,
} from "../../base/index.ts";
import { STEPS_PER_PIXEL } from "../distance.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { traceLines } from "../trace.ts";
import { commonShare } from "./apart.ts";
import type { SymbolProposal } from "./symbol-proposal.ts";
import { LINE_SURE_FROM, mostByTone, toneAlong } from "./tone.ts";

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
/** From so many dots on there is a usual size; dots are at most so many times as large. */
const FEW = 5;
const OVERSIZE = 1.6;
/** A line's own ink is looked at between these line widths from the joint. */
const CLEAR_FROM = 2;
const CLEAR_TO = 10;
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
    const ways = nodes.map((): (readonly Point[])[] => []);
    for (const { from, to, points } of runs) {
      ways[from]?.push(points);
      ways[to]?.push(points.toReversed());
    }
    nodes.forEach(({ at }, n) => {
      const out = ways[n] ?? [];
      if (out.length < 3) return;
      const solid = solidAt(page, at);
      if (solid > LARGEST) return;
      const most = Math.min(...out.map((way) => mostByTone(toneFrom(page, way), LINE_SURE_FROM)));
      found.push(dotAt(page, at, solid, Math.min(most, sureOf(solid))));
    });
  }
  for (const { kind, at, isLikelier } of questions) {
    if (kind !== "dot" || isLikelier !== "joined") continue;
    found.push(dotAt(page, at, solidAt(page, at), OPEN));
  }
  yield 1;
  return ofOneSize(found).filter(
    ({ box, confidence }) => confidence > 0 && parts.every((part) => commonShare(part, box) === 0),
  );
}

/** Dots of one sheet are drawn alike: one that is far larger than the others is likelier ink run together. */
function ofOneSize(dots: readonly SymbolProposal[]): SymbolProposal[] {
  const sizes = dots.flatMap(({ unit, confidence }) => (confidence > OPEN ? [unit] : []));
  if (sizes.length < FEW) return [...dots];
  const usual = sizes.sort((one, other) => one - other)[sizes.length >> 1] as number;
  return dots.map((dot) =>
    dot.unit > OVERSIZE * usual ? { ...dot, confidence: Math.min(OPEN, dot.confidence) } : dot,
  );
}

function dotAt(page: PreparedPage, at: Point, solid: number, confidence: number): SymbolProposal {
  const radius = (solid * page.lineWidth) / page.scale;
  return {
    kind: "splice",
    box: boxAt(at, radius),
    at,
    turn: 0,
    unit: radius / RADIUS,
    confidence,
    ends: [at],
    others: [],
  };
}

/** How dark a line is that leaves a joint, where it is clear of the dot: `way` in pixels of the picture. */
function toneFrom(page: PreparedPage, way: readonly Point[]): number {
  const { scale, lineWidth } = page;
  const places: Point[] = [];
  let far = 0;
  for (const [n, to] of way.entries()) {
    const from = way[n - 1];
    if (!from) continue;
    const length = distance(from, to);
    for (let by = 0; by < length && far < CLEAR_TO * (lineWidth / scale); by++, far++) {
      if (far < CLEAR_FROM * (lineWidth / scale)) continue;
      const [x, y] = add(from, scaled(subtract(to, from), by / length));
      places.push([(x + 0.5) * scale - 0.5, (y + 0.5) * scale - 0.5]);
    }
  }
  return toneAlong(page, places);
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
