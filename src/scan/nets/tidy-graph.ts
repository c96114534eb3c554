import { distance, type Point } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import type { GraphNode, GraphRun } from "./net-graph.ts";

/** In line widths: an end that sticks out no farther is the ink's, not a line's. */
const STUB = 3;
/** ... and two ways round a hole in the ink lie no farther apart, nor are they longer. */
const HOLE = 2;
const ROUND_HOLE = 8;
/** Each stub taken out has all lines of its net looked at again. No circuit comes near: this is hatching. */
const MOST_LOOKED_AT = 1_000_000;
/** Lines looked at in a slice. */
const SLICE = 10_000;

/**
 * The lines of a net without what only thinning made: stubs, rings round a hole in a line's ink, and
 * nodes at which nothing meets. `isHeld` tells the ends that hang on something. Of a net that has far too
 * many, those are left for which `most` lines would have to be looked at again: short lines more, and none less.
 */
export function* tidied(
  runs: readonly GraphRun[],
  width: number,
  lineWidth: number,
  isHeld: (node: GraphNode) => boolean,
  most = MOST_LOOKED_AT,
): Sliced<GraphRun[]> {
  let kept = runs.filter(
    ({ from, to, places }) => from !== to || places.length > ROUND_HOLE * lineWidth,
  );
  if (kept.length === 0) return [...runs];
  let told = 0;
  for (let looked = kept.length; looked <= most; looked += kept.length) {
    if (looked - told > SLICE) {
      told = looked;
      yield looked / most;
    }
    const degrees = degreesOf(kept);
    const isStub = (run: GraphRun) =>
      [run.from, run.to].some(
        (node, n) =>
          node.isFree &&
          degrees.get(node) === 1 &&
          (degrees.get(n === 0 ? run.to : run.from) ?? 0) > 2 &&
          !isHeld(node) &&
          distance(node.at, (n === 0 ? run.to : run.from).at) -
            (n === 0 ? run.to : run.from).radius <
            STUB * lineWidth &&
          run.places.length < 2 * STUB * lineWidth,
      );
    const stub = kept.find(isStub) ?? twinIn(kept, width, lineWidth);
    if (!stub) break;
    kept = merged(kept.filter((run) => run !== stub));
  }
  return merged(kept);
}

function degreesOf(runs: readonly GraphRun[]): ReadonlyMap<GraphNode, number> {
  const degrees = new Map<GraphNode, number>();
  for (const { from, to } of runs) {
    degrees.set(from, (degrees.get(from) ?? 0) + 1);
    degrees.set(to, (degrees.get(to) ?? 0) + 1);
  }
  return degrees;
}

/** One of two short lines that run side by side from node to node: round a hole in the print. */
function twinIn(runs: readonly GraphRun[], width: number, lineWidth: number): GraphRun | null {
  const between = new Map<GraphNode, GraphRun[]>();
  for (const run of runs) {
    if (run.places.length > ROUND_HOLE * lineWidth || run.from === run.to) continue;
    const known = between.get(run.from);
    if (known) known.push(run);
    else between.set(run.from, [run]);
    const twin = [...(between.get(run.to) ?? []), ...(known ?? [])].find(
      (other) =>
        other !== run &&
        (other.from === run.from
          ? other.to === run.to
          : other.from === run.to && other.to === run.from),
    );
    if (twin && farApart(run, twin, width) <= HOLE * lineWidth)
      return run.places.length < twin.places.length ? twin : run;
  }
  return null;
}

const middleOf = ({ places, from, to }: GraphRun, width: number): Point => {
  const at = places[places.length >> 1];
  return at === undefined
    ? [(from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2]
    : [at % width, Math.floor(at / width)];
};

const farApart = (a: GraphRun, b: GraphRun, width: number) =>
  distance(middleOf(a, width), middleOf(b, width));

/** Joins two runs to one where nothing else meets them. */
function merged(runs: readonly GraphRun[]): GraphRun[] {
  const at = new Map<GraphNode, Set<GraphRun>>();
  const put = (run: GraphRun) => {
    for (const node of [run.from, run.to]) {
      const known = at.get(node);
      if (known) known.add(run);
      else at.set(node, new Set([run]));
    }
  };
  for (const run of runs) put(run);
  for (const [node, both] of at) {
    const [a, b] = both;
    if (!a || !b || both.size !== 2 || node.terminals.length > 0) continue;
    if (a.from === a.to || b.from === b.to) continue;
    const run = joined(a.to === node ? a : reversed(a), b.from === node ? b : reversed(b));
    for (const old of [a, b]) {
      at.get(old.from)?.delete(old);
      at.get(old.to)?.delete(old);
    }
    put(run);
  }
  return [...new Set([...at.values()].flatMap((set) => [...set]))];
}

function joined(a: GraphRun, b: GraphRun): GraphRun {
  const start = a.places.length;
  return {
    from: a.from,
    to: b.to,
    places: [...a.places, ...b.places],
    crossings: [
      ...a.crossings,
      ...b.crossings.map(({ index, at }) => ({ index: index + start, at })),
    ],
  };
}

const reversed = ({ from, to, places, crossings }: GraphRun): GraphRun => ({
  from: to,
  to: from,
  places: [...places].reverse(),
  crossings: crossings.map(({ index, at }) => ({ index: places.length - index, at })).reverse(),
});
