import { describe, expect, test } from "vitest";
import { type Point, type Random, seededRandom } from "../../../src/base/index.ts";
import type { GraphNode, GraphRun } from "../../../src/scan/nets/net-graph.ts";
import { tidied } from "../../../src/scan/nets/tidy-graph.ts";
import { finished } from "../../../src/scan/sliced.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
/** Wider than the longest comb. */
const WIDTH = 10_000;
const LINE = 4;

const nodeAt = (at: Point, isFree: boolean): GraphNode => ({
  at,
  radius: 2,
  isFree,
  terminals: [],
});

/** A line straight from one node to another, their own places left out. */
function run(from: GraphNode, to: GraphNode): GraphRun {
  const [[x, y], [u, v]] = [from.at, to.at];
  const steps = Math.max(Math.abs(u - x), Math.abs(v - y));
  const places = Array.from({ length: Math.max(0, steps - 1) }, (_, n) => {
    const share = (n + 1) / steps;
    return Math.round(y + (v - y) * share) * WIDTH + Math.round(x + (u - x) * share);
  });
  return { from, to, places, crossings: [] };
}

interface Comb {
  readonly runs: readonly GraphRun[];
  /** Nodes with a name: the two ends of its back, and where long teeth end. */
  readonly named: readonly GraphNode[];
  /** Places that are on no stub, in all. */
  readonly real: ReadonlySet<number>;
}

/** A long line with so many teeth, most of them stubs that only thinning made, and some named lines. */
function comb(random: Random, teeth: number): Comb {
  const runs: GraphRun[] = [];
  const named: GraphNode[] = [];
  const real = new Set<number>();
  const put = (one: GraphRun, isReal: boolean) => {
    runs.push(one);
    if (isReal) for (const at of one.places) real.add(at);
  };
  const name = (node: GraphNode) => {
    node.terminals.push(`T${named.length}`);
    named.push(node);
  };
  let before = nodeAt([10, 100], true);
  name(before);
  for (let n = 0; n < teeth; n++) {
    const joint = nodeAt([18 + 8 * (n + 1), 100], false);
    put(run(before, joint), true);
    const isStub = random.chance(0.9);
    const [x] = joint.at;
    const tip = nodeAt([x, 100 - (isStub ? 5 + random.below(4) : 60)], true);
    put(random.chance(0.5) ? run(joint, tip) : run(tip, joint), !isStub);
    if (!isStub) name(tip);
    before = joint;
  }
  const end = nodeAt([before.at[0] + 30, 100], true);
  put(run(before, end), true);
  name(end);
  return { runs, named, real };
}

const tidiedTo = (runs: readonly GraphRun[], most?: number) =>
  finished(tidied(runs, WIDTH, LINE, (node) => node.terminals.length > 0, most));

const placesOf = (runs: readonly GraphRun[]) => runs.flatMap(({ places }) => places);

/** Free ends without a name: what is left of stubs. */
const stubsIn = (runs: readonly GraphRun[]) =>
  runs.filter((one) =>
    [one.from, one.to].some(({ isFree, terminals }) => isFree && terminals.length === 0),
  );

/** How many pieces hang together. */
function piecesIn(runs: readonly GraphRun[]): number {
  const groupOf = new Map<GraphNode, Set<GraphNode>>();
  for (const { from, to } of runs) {
    const both = new Set([...(groupOf.get(from) ?? [from]), ...(groupOf.get(to) ?? [to])]);
    for (const node of both) groupOf.set(node, both);
  }
  return new Set(groupOf.values()).size;
}

/** Places of each run follow one another: a run put together the wrong way round would leap. */
function expectWalks(runs: readonly GraphRun[]) {
  for (const { from, to, places } of runs) {
    const points: Point[] = places.map((at) => [at % WIDTH, Math.floor(at / WIDTH)]);
    const walk = [from.at, ...points, to.at];
    for (let n = 1; n < walk.length; n++) {
      const [[x, y], [u, v]] = [walk[n - 1] as Point, walk[n] as Point];
      expect(Math.max(Math.abs(u - x), Math.abs(v - y))).toBeLessThanOrEqual(2);
    }
  }
}

describe("a net without what only thinning made", () => {
  test("its stubs are gone, and nothing else", () => {
    const { runs, named, real } = comb(seededRandom(SEED), 60);
    const left = tidiedTo(runs);
    expect(stubsIn(left)).toEqual([]);
    expect(new Set(placesOf(left))).toEqual(real);
    // one line from joint to joint, and one out to every name
    expect(left).toHaveLength(2 * named.length - 3);
    expectWalks(left);
  });

  // However little is looked at, a net must be the same net: only short lines more.
  test.each([0, 1, 50, 150, 400, 1500, 4000])(
    "given up after %i lines looked at, it is the same net with some stubs left",
    (most) => {
      const { runs, named, real } = comb(seededRandom(SEED), 60);
      const left = tidiedTo(runs, most);
      const places = placesOf(left);
      expect(new Set(places).size).toBe(places.length);
      for (const at of real) expect(places).toContain(at);
      const known = new Set(placesOf(runs));
      for (const at of places) expect(known.has(at)).toBe(true);
      expect(piecesIn(left)).toBe(1);
      const nodes = new Set(left.flatMap(({ from, to }) => [from, to]));
      for (const node of named) expect(nodes.has(node)).toBe(true);
      for (const stub of stubsIn(left)) expect(stub.places.length).toBeLessThan(10);
      expectWalks(left);
    },
  );

  test("the more is looked at, the fewer stubs are left", () => {
    const { runs } = comb(seededRandom(SEED), 60);
    const counts = [0, 400, 1500, 1_000_000].map((most) => stubsIn(tidiedTo(runs, most)).length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(counts[0]).toBeGreaterThan(counts[1] as number);
    expect(counts.at(-1)).toBe(0);
  });

  test("a net with thousands of stubs is given up by itself, and is the same net", () => {
    const { runs, named, real } = comb(seededRandom(SEED), 1050);
    const left = tidiedTo(runs);
    expect(stubsIn(left).length).toBeGreaterThan(0);
    const places = new Set(placesOf(left));
    for (const at of real) if (!places.has(at)) expect.fail(`place ${at} is lost`);
    expect(piecesIn(left)).toBe(1);
    const nodes = new Set(left.flatMap(({ from, to }) => [from, to]));
    expect(named.filter((node) => !nodes.has(node))).toEqual([]);
  });
});
