import { boundsOf, distance, nearestOnSegment, type Point } from "../base/index.ts";
import { contextOn, followLines } from "./lines/follow.ts";
import type { LineContext } from "./lines/line-context.ts";
import type { PreparedPage } from "./lines/prepared-page.ts";
import { lineEnds } from "./nets/line-ends.ts";
import { type GraphRun, netGraphs } from "./nets/net-graph.ts";
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

/**
 * Follows the lines of a page to nets: those that a terminal names, or all that are no letters.
 * `terminals` are named places where lines begin and end, in pixels of the picture.
 */
export function* traceLines(
  page: PreparedPage,
  context: LineContext,
  terminals: Readonly<Record<string, Point>>,
  which: "with-terminals" | "all",
): Sliced<Traced> {
  const { scale, lineWidth } = page;
  const finer = ([x, y]: Point): Point => [x * scale - 0.5, y * scale - 0.5];
  const coarser = ([x, y]: Point): Point => [(x + 0.5) / scale, (y + 0.5) / scale];
  const there = contextOn(page, context);
  const followed = yield* asPart(followLines(page, there), 0, 0.7);
  const placed = Object.fromEntries(
    Object.entries(terminals).map(([name, at]) => [name, finer(at)]),
  );
  const namings = namingsOf(followed, placed, there.parts, lineWidth);
  yield 0.75;
  const { width } = followed.skeleton;
  const graphs = netGraphs(followed, lineWidth, namings);
  yield 0.8;
  const ends = lineEnds(there.parts, followed, lineWidth);
  const named = new Set(namings.map(({ stretch }) => followed.netOf[stretch] as number));
  const ids = new Map<number, string>();
  const nets: TracedNet[] = [];
  let [done, all, told] = [0, 0, 0];
  for (const { runs } of graphs) all += placesIn(runs);
  for (const { net, runs } of graphs) {
    const places = placesIn(runs);
    done += places;
    if (done - told > PLACES) {
      told = done;
      yield 0.8 + (0.2 * done) / all;
    }
    if (which === "with-terminals" && !named.has(net)) continue;
    const lines = tidied(runs, width, lineWidth, ends.isHeld);
    const shape = netShape(lines, width, lineWidth, ends.endOf);
    const isWanted = named.has(net) || runs.some(ends.isAtPart) || isNoLetter(shape, lineWidth);
    if (!isWanted) continue;
    const id = idOf(runs, width);
    const traced = tracedNet(id, shape, coarser);
    if (!traced) continue;
    ids.set(net, id);
    nets.push(traced);
  }
  const questions = questionsThatMatter(followed, new Set(ids.keys())).map(
    ({ kind, at, isLikelier, stretches }): LineQuestion => ({
      kind,
      at: coarser(at),
      isLikelier,
      nets: [...new Set(stretches.flatMap((one) => ids.get(followed.netOf[one] as number) ?? []))],
    }),
  );
  return { nets, questions };
}

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

function tracedNet(
  id: string,
  { nodes, runs }: NetShape,
  coarser: (at: Point) => Point,
): TracedNet | null {
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
