import { type Box, boxContains, type Point } from "../../base/index.ts";
import type { DrawnEnd, DrawnSymbol } from "./drawn-symbol.ts";
import { matrixOf, type Pose, placed, placedBox, unplaced } from "./pose.ts";
import { giveSampled, pointSample } from "./sampled.ts";
import { fromPicturePoint, labelNear, type SymbolPage } from "./symbol-page.ts";
import type { PlacedExample, QuarterTurn, SymbolKind } from "./symbol-proposal.ts";

/** Examples of one kind that are used at most: more look much the same. */
const OF_A_KIND = 3;
/** Fewer places of line are no drawing of anything. */
const LEAST_POINTS = 14;
const ANCHORS = 5;
/** How much larger or smaller the same symbol may be drawn elsewhere. */
const SIZES = 1.35;

const KINDS: ReadonlySet<string> = new Set<SymbolKind>([
  "battery",
  "ground",
  "fuse",
  "switch",
  "lamp",
  "solenoid",
  "motor",
  "heater",
  "resistor",
  "diode",
  "relay",
  "inline",
]);

/** Symbols as the user's own placed parts show them: what is printed there. */
export function examplesAsSymbols(
  page: SymbolPage,
  askew: number,
  examples: readonly PlacedExample[],
): { readonly symbol: DrawnSymbol; readonly example: string }[] {
  const counts = new Map<string, number>();
  return examples.flatMap((example) => {
    const count = counts.get(example.kind) ?? 0;
    if (!KINDS.has(example.kind) || count >= OF_A_KIND) return [];
    const symbol = asSymbol(page, askew, example);
    if (!symbol) return [];
    counts.set(example.kind, count + 1);
    return [{ symbol, example: example.id }];
  });
}

function asSymbol(page: SymbolPage, askew: number, example: PlacedExample): DrawnSymbol | null {
  const unit = example.unit / page.coarseness;
  const [x, y] = fromPicturePoint(page, example.at);
  const quarter = Math.round(example.turn / 90);
  const turn = ((((quarter % 4) + 4) % 4) * 90) as QuarterTurn;
  const pose: Pose = { x, y, along: unit, across: unit, turn, askew, isMirrored: false };
  const matrix = matrixOf(pose);
  const local = (at: Point): Point => unplaced(matrix, ...fromPicturePoint(page, at));
  const body = boundsIn(local, example.box);
  const ends = example.ends.map((at): DrawnEnd => endOf(local(at), body));
  const points = printedIn(page, matrix, body, ends);
  if (points.length < LEAST_POINTS) return null;
  const anchors = page.pieces
    .map(({ from, to }) => [unplaced(matrix, ...from), unplaced(matrix, ...to)] as const)
    .filter(([a, b]) => boxContains(body, a) && boxContains(body, b))
    .sort((a, b) => lengthOf(b) - lengthOf(a))
    .slice(0, ANCHORS);
  if (anchors.length === 0) return null;
  const inLines = unit / page.line;
  const symbol: DrawnSymbol = {
    name: `as ${example.id} is printed`,
    kind: example.kind as SymbolKind,
    strokes: [],
    ends,
    zone: body,
    body,
    anchors,
    turns: [0, 90, 180, 270],
    mirror: "none",
    heights: [1],
    unitBy: "x",
    units: [inLines / SIZES, inLines * SIZES],
    isRound: true,
  };
  giveSampled(symbol, pointSample(points, body));
  return symbol;
}

const lengthOf = ([a, b]: readonly [Point, Point]): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function boundsIn(local: (at: Point) => Point, { left, top, right, bottom }: Box): Box {
  const [a, b] = [local([left, top]), local([right, bottom])];
  return {
    left: Math.min(a[0], b[0]),
    top: Math.min(a[1], b[1]),
    right: Math.max(a[0], b[0]),
    bottom: Math.max(a[1], b[1]),
  };
}

/** The way out of the nearest side. */
function endOf(at: Point, { left, top, right, bottom }: Box): DrawnEnd {
  const sides: readonly (readonly [number, Point])[] = [
    [at[0] - left, [-1, 0]],
    [right - at[0], [1, 0]],
    [at[1] - top, [0, -1]],
    [bottom - at[1], [0, 1]],
  ];
  const [, out] = sides.reduce((best, one) => (one[0] < best[0] ? one : best));
  return { at, out };
}

/** Thinned line within the body, units: of what its wires reach, and of what lies in it whole. */
function printedIn(
  page: SymbolPage,
  matrix: ReturnType<typeof matrixOf>,
  body: Box,
  ends: readonly DrawnEnd[],
): Point[] {
  const reach = Math.ceil(page.line);
  const wired = new Set(ends.map(({ at }) => labelNear(page, placed(matrix, at), reach)));
  const { left, top, right, bottom } = placedBox(matrix, body);
  const found: Point[] = [];
  for (let y = Math.max(0, Math.ceil(top)); y <= Math.min(page.height - 1, bottom); y++) {
    for (let x = Math.max(0, Math.ceil(left)); x <= Math.min(page.width - 1, right); x++) {
      if (!page.thinned.data[y * page.width + x]) continue;
      const label = labelNear(page, [x, y], 0);
      const one = page.components.list[label - 1];
      if (!one) continue;
      const isInside =
        one.left >= left && one.right <= right && one.top >= top && one.bottom <= bottom;
      if (isInside || wired.has(label)) found.push(unplaced(matrix, x, y));
    }
  }
  return found;
}
