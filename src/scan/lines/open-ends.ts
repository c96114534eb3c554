import type { Box, Point } from "../../base/index.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { type Branch, bendBetween, headingOf, placesAlong } from "./branch.ts";
import { middleDarkness } from "./darkness.ts";
import type { PreparedPage } from "./prepared-page.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** Where a line stops in the open: neither at a part nor at the rim of the picture. */
export interface OpenEnd {
  readonly node: number;
  readonly stretch: number;
  readonly at: Point;
  /** The way in which the line would go on, length 1. */
  readonly onward: Point;
  /** As `onward`, of its very end alone: what a bad print left of a line between two arcs is that short. */
  readonly tip: Point;
  /** How dark that is, as `darkness` has it. */
  readonly dark: number;
  /** Pixels of line behind it, up to where it meets another. */
  readonly length: number;
  /** Whether what is behind it hangs on a part, or is longer than any letter's strokes. */
  readonly isHeld: boolean;
}

/** How much of a line its direction is measured on, in line widths. */
const MEASURED = 8;
const TIP_SEEN = 2;
/** ... and where it turns within that, on so much, by more than so many degrees. */
const BEFORE_CORNER = 3.5;
const TURNS = 8;
/** Thinning eats about half a line's width off its end. */
const EATEN = 0.5;
/** In line widths: thinning forks the ragged end of a line into tips no longer than this. */
const TIP = 1.5;
const AT_PART = 2.5;
/** In line widths: letters are smaller, all their strokes together, and each of them. */
const LETTER = 24;
const STROKE = 10;
/** The ends of a straight line are apart by that share of its length at least. */
const STRAIGHT = 0.9;

/** Whether a place is so near a part that a line which ends there is one of its pins. */
function besideParts(page: PreparedPage, parts: readonly Box[]) {
  const near = AT_PART * page.lineWidth;
  return (x: number, y: number) =>
    parts.some(
      (box) =>
        x > box.left - near && x < box.right + near && y > box.top - near && y < box.bottom + near,
    );
}

/** Nodes where a line ends at a part. */
export function endsAtParts(
  page: PreparedPage,
  skeleton: Skeleton,
  parts: readonly Box[],
): ReadonlySet<number> {
  const isAtPart = besideParts(page, parts);
  return new Set(
    skeleton.nodes.flatMap(({ x, y, stretches }, node) =>
      stretches.length === 1 && isAtPart(x, y) ? [node] : [],
    ),
  );
}

/** Nodes, or stretches, looked at in a slice. */
const SLICE = 10_000;

export function* openEnds(
  page: PreparedPage,
  skeleton: Skeleton,
  parts: readonly Box[],
): Sliced<OpenEnd[]> {
  const { lineWidth } = page;
  const near = AT_PART * lineWidth;
  const found: OpenEnd[] = [];
  const isAtPart = besideParts(page, parts);
  const wholes = yield* asPart(wholesOf(skeleton, isAtPart), 0, 0.5);
  const look = (number: number) => {
    const node = skeleton.nodes[number] as SkeletonNode;
    const stretch = node.stretches[0];
    if (stretch === undefined || node.stretches.length > 1) return;
    const { x, y } = node;
    if (x < near || y < near || x > skeleton.width - near || y > skeleton.height - near) return;
    if (isAtPart(x, y)) return;
    const { from, to, length } = skeleton.stretches[stretch] as Stretch;
    if (from === to) return;
    const points = placesAlong(skeleton, { stretch, isFrom: from === number });
    const other = from === number ? to : from;
    const line =
      length > TIP * lineWidth
        ? null
        : lineBehindTip(skeleton, stretch, other, TIP * lineWidth, isAtPart);
    if (line) for (const place of placesAlong(skeleton, line)) points.push(place);
    const inward = inwardOf(points, [x, y], lineWidth);
    if (!inward) return;
    const onward: Point = [-inward[0], -inward[1]];
    const tip = headingOf(points, [x, y], 0, TIP_SEEN * lineWidth)?.along ?? inward;
    const eaten = EATEN * lineWidth;
    const whole = wholes.of(stretch);
    found.push({
      node: number,
      stretch,
      at: [x + onward[0] * eaten, y + onward[1] * eaten],
      onward,
      tip: [-tip[0], -tip[1]],
      dark: middleDarkness(page, [x, y], points, 0, MEASURED * lineWidth),
      length: length + (line ? (skeleton.stretches[line.stretch] as Stretch).length : 0),
      isHeld:
        whole.length > LETTER * lineWidth ||
        whole.isAtPart ||
        (length > STROKE * lineWidth && isStraight(skeleton, stretch)),
    });
  };
  for (let number = 0; number < skeleton.nodes.length; number++) {
    if (number % SLICE === SLICE - 1) yield 0.5 + (0.5 * number) / skeleton.nodes.length;
    look(number);
  }
  return found;
}

/** Whether a stretch is no word's smeared letters. */
function isStraight({ nodes, stretches }: Skeleton, stretch: number): boolean {
  const { from, to, length } = stretches[stretch] as Stretch;
  const [a, b] = [nodes[from] as SkeletonNode, nodes[to] as SkeletonNode];
  return Math.hypot(a.x - b.x, a.y - b.y) >= STRAIGHT * length;
}

/** The line whose ragged end forks into tips of which the stretch is one; null where it is no such tip. */
function lineBehindTip(
  { nodes, stretches }: Skeleton,
  tip: number,
  node: number,
  longest: number,
  isAtPart: (x: number, y: number) => boolean,
): Branch | null {
  const isTip = (number: number) => {
    const { from, to, length } = stretches[number] as Stretch;
    const end = nodes[from === node ? to : from] as SkeletonNode;
    // Of a line that ends at a part no more may be left than that.
    return length <= longest && end.stretches.length === 1 && !isAtPart(end.x, end.y);
  };
  const lines = (nodes[node] as SkeletonNode).stretches.filter(
    (number) => number !== tip && !isTip(number),
  );
  const [line] = lines;
  if (line === undefined || lines.length > 1) return null;
  return { stretch: line, isFrom: (stretches[line] as Stretch).from === node };
}

function inwardOf(points: readonly Point[], end: Point, lineWidth: number): Point | null {
  const long = headingOf(points, end, lineWidth, MEASURED * lineWidth);
  const short = headingOf(points, end, lineWidth, BEFORE_CORNER * lineWidth);
  if (!long) return headingOf(points, end, 0, MEASURED * lineWidth)?.along ?? null;
  if (!short) return long.along;
  const turn = 180 - bendBetween(long.along, short.along);
  return turn > TURNS ? short.along : long.along;
}

/** All line that hangs together: how long it is, in pixels, and whether it has an end at a part. */
interface Whole {
  length: number;
  isAtPart: boolean;
}

interface Wholes {
  readonly of: (stretch: number) => Whole;
}

/** Of each stretch the whole that it belongs to. */
function* wholesOf(
  { stretches, nodes }: Skeleton,
  isAtPart: (x: number, y: number) => boolean,
): Sliced<Wholes> {
  const wholes: Whole[] = [];
  /** By stretch the number of its whole plus one. */
  const wholeOf = new Int32Array(stretches.length);
  /** All stretches in the order in which they are met, each whole's together. */
  const all = new Int32Array(stretches.length);
  let count = 0;
  for (let first = 0; first < stretches.length; first++) {
    if (wholeOf[first] !== 0) continue;
    const whole: Whole = { length: 0, isAtPart: false };
    const number = wholes.push(whole);
    wholeOf[first] = number;
    let n = count;
    all[count++] = first;
    for (; n < count; n++) {
      if (n % SLICE === SLICE - 1) yield n / stretches.length;
      const { from, to, length } = stretches[all[n] as number] as Stretch;
      whole.length += length;
      for (let end = 0; end < 2; end++) {
        const { x, y, stretches: next } = nodes[end === 0 ? from : to] as SkeletonNode;
        if (next.length === 1 && isAtPart(x, y)) whole.isAtPart = true;
        for (const beside of next) {
          if (wholeOf[beside] !== 0) continue;
          wholeOf[beside] = number;
          all[count++] = beside;
        }
      }
    }
  }
  return { of: (stretch) => wholes[(wholeOf[stretch] as number) - 1] as Whole };
}
