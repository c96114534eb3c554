import { boundsOf, distance, nearestOnSegment, type Point } from "../base/index.ts";
import { CrowdedPage, crowdOn } from "./crowded-page.ts";
import { contextOn, type FollowedPage, followLines } from "./lines/follow.ts";
import type { LineContext } from "./lines/line-context.ts";
import type { PreparedPage } from "./lines/prepared-page.ts";
import { type LineEnds, lineEnds } from "./nets/line-ends.ts";
import { type GraphRun, type NetGraph, netGraphs } from "./nets/net-graph.ts";
import { type NetShape, netShape } from "./nets/net-shape.ts";
import { questionsThatMatter } from "./nets/questions.ts";
import { namingsOf } from "./nets/terminals.ts";
import { tidied } from "./nets/tidy-graph.ts";
import type { LineQuestion, NetRun, Traced, TracedNet } from "./nets/traced-net.ts";
import { asPart, type Sliced } from "./sliced.ts";

/** Places of lines a slice. */
const PLACES = 8_000;
/** In line widths: letters, two that touch too, are smaller both ways, and each of their strokes. */
const LETTER = 14;
const STROKE = 10;

const tooManyLines = (times: number) => {
  const how = times < 1.5 ? "more" : `about ${Math.round(times)} times as many`;
  return (
    `There are ${how} lines on this picture ${times < 1.5 ? "than" : "as"} can be followed, far more than on a full sheet: ` +
    "crop it to the diagram, or clean it of grain, tone and printed grids."
  );
};

/** Which nets of a page are wanted: those that a terminal names, or all that are no letters. */
export type WantedNets = "with-terminals" | "all";

/** Every line of a page followed, and what terminals name: all its nets come of it without following again. */
export interface FollowedLines {
  readonly page: PreparedPage;
  readonly followed: FollowedPage;
  readonly graphs: readonly NetGraph[];
  readonly ends: LineEnds;
  /** Nets that terminals name, as `followLines` numbers them. */
  readonly named: ReadonlySet<number>;
  /** What was made of a net so far: null for letters and what else is none. */
  readonly made: Map<number, TracedNet | null>;
}

/**
 * Follows the lines of a page to nets: those that a terminal names, or all that are no letters.
 * `terminals` are named places where lines begin and end, in pixels of the picture.
 */
export function* traceLines(
  page: PreparedPage,
  context: LineContext,
  terminals: Readonly<Record<string, Point>>,
  which: WantedNets,
): Sliced<Traced> {
  const lines = yield* asPart(followedLines(page, context, terminals), 0, 0.8);
  return yield* asPart(netsOf(lines, which), 0.8, 1);
}

/** As `traceLines`, up to where nets are made of lines. Throws `CrowdedPage` where there are far too many. */
export function* followedLines(
  page: PreparedPage,
  context: LineContext,
  terminals: Readonly<Record<string, Point>>,
): Sliced<FollowedLines> {
  const { scale, lineWidth } = page;
  const finer = ([x, y]: Point): Point => [x * scale - 0.5, y * scale - 0.5];
  const there = contextOn(page, context);
  const crowd = yield* asPart(crowdOn(page, [...there.parts, ...there.words]), 0, 0.02);
  if (crowd > 0) throw new CrowdedPage(tooManyLines(crowd));
  const followed = yield* asPart(followLines(page, there), 0.02, 0.85);
  const placed = Object.fromEntries(
    Object.entries(terminals).map(([name, at]) => [name, finer(at)]),
  );
  const namings = namingsOf(followed, placed, there.parts, lineWidth);
  yield 0.9;
  const graphs = yield* asPart(netGraphs(followed, lineWidth, namings), 0.9, 1);
  return {
    page,
    followed,
    graphs,
    ends: lineEnds(there.parts, followed, lineWidth),
    named: new Set(namings.map(({ stretch }) => followed.netOf[stretch] as number)),
    made: new Map(),
  };
}

/** The nets of lines that were followed. What was made for one wish is not made again for the other. */
export function* netsOf(lines: FollowedLines, which: WantedNets): Sliced<Traced> {
  const { followed, graphs, named, page } = lines;
  const ids = new Map<number, string>();
  const nets: TracedNet[] = [];
  let [done, all, told] = [0, 0, 0];
  for (const { runs } of graphs) all += placesIn(runs);
  for (const graph of graphs) {
    const { net, runs } = graph;
    const before = done / all;
    done += placesIn(runs);
    if (done - told > PLACES) {
      told = done;
      yield before;
    }
    if (which === "with-terminals" && !named.has(net)) continue;
    const traced = yield* asPart(madeNet(lines, graph), before, done / all);
    if (!traced) continue;
    ids.set(net, traced.id);
    nets.push(traced);
  }
  const questions = questionsThatMatter(followed, new Set(ids.keys())).map(
    ({ kind, at, isLikelier, stretches }): LineQuestion => ({
      kind,
      at: onPicture(page, at),
      isLikelier,
      nets: [...new Set(stretches.flatMap((one) => ids.get(followed.netOf[one] as number) ?? []))],
    }),
  );
  return { nets, questions, isTooRough: followed.isTooRough };
}

function* madeNet(
  { page, followed, ends, named, made }: FollowedLines,
  { net, runs }: NetGraph,
): Sliced<TracedNet | null> {
  const known = made.get(net);
  if (known !== undefined) return known;
  const { lineWidth } = page;
  const { width } = followed.skeleton;
  const lines = yield* asPart(tidied(runs, width, lineWidth, ends.isHeld), 0, 0.3);
  const shape = yield* asPart(netShape(lines, width, lineWidth, ends.endOf), 0.3, 1);
  const isWanted = named.has(net) || runs.some(ends.isAtPart) || isNoLetter(shape, lineWidth);
  const traced = isWanted ? tracedNet(idOf(runs, width), shape, page) : null;
  made.set(net, traced);
  return traced;
}

/** A place of a prepared page in pixels of its picture. */
const onPicture = ({ scale }: PreparedPage, [x, y]: Point): Point => [
  (x + 0.5) / scale,
  (y + 0.5) / scale,
];

/** The net whose line passes nearest to a place, both in pixels of the picture; null beyond `reach`. */
export function netAt({ nets }: Traced, at: Point, reach: number): TracedNet | null {
  let [best, nearest]: [TracedNet | null, number] = [null, reach];
  for (const net of nets) {
    const { left, top, right, bottom } = net.box;
    if (at[0] < left - nearest || at[0] > right + nearest) continue;
    if (at[1] < top - nearest || at[1] > bottom + nearest) continue;
    for (const { points } of net.runs) {
      for (let n = 1; n < points.length; n++) {
        const [x, y] = nearestOnSegment(at, points[n - 1] as Point, points[n] as Point);
        const far = Math.hypot(x - at[0], y - at[1]);
        if (far <= nearest) [best, nearest] = [net, far];
      }
    }
  }
  return best;
}

const placesIn = (runs: readonly GraphRun[]) =>
  runs.reduce((sum, { places }) => sum + places.length, 0);

function isNoLetter({ runs }: NetShape, lineWidth: number): boolean {
  const pieces = runs.flatMap(({ points }) =>
    points.slice(1).map((point, n) => distance(point, points[n] as Point)),
  );
  if (pieces.some((length) => length > STROKE * lineWidth)) return true;
  const box = boundsOf(runs.flatMap(({ points }) => points));
  return box !== null && Math.max(box.right - box.left, box.bottom - box.top) > LETTER * lineWidth;
}

/** By the topmost of its places, which no other net has. */
function idOf(runs: readonly GraphRun[], width: number): string {
  let first = Number.POSITIVE_INFINITY;
  for (const { places } of runs) for (const at of places) if (at < first) first = at;
  if (first === Number.POSITIVE_INFINITY) {
    const [x, y] = runs[0]?.from.at ?? [0, 0];
    first = Math.round(y) * width + Math.round(x);
  }
  return `N${first % width}-${Math.floor(first / width)}`;
}

function tracedNet(id: string, { nodes, runs }: NetShape, page: PreparedPage): TracedNet | null {
  const coarser = (at: Point) => onPicture(page, at);
  const degrees = nodes.map(() => 0);
  for (const node of runs.flatMap(({ from, to }) => [from, to])) {
    degrees[node] = (degrees[node] as number) + 1;
  }
  const lines = runs.map(
    ({ from, to, points }): NetRun => ({ from, to, points: points.map(coarser) }),
  );
  const box = boundsOf(lines.flatMap(({ points }) => points));
  if (!box) return null;
  return {
    id,
    nodes: nodes.map(({ node, at }, n) => ({
      at: coarser(at),
      kind: degrees[n] === 1 ? "end" : "joint",
      terminals: node.terminals,
    })),
    runs: lines,
    terminals: nodes.flatMap(({ node }) => node.terminals),
    box,
  };
}
