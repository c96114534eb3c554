/**
 * In which order the nodes of a network are eliminated, and between which pairs of nodes that can
 * ever put a conductance: worked out once for all branches that a circuit can have, conducting or
 * not, so that a switch changes numbers and never the plan.
 *
 * The node with the fewest neighbours goes first (minimum degree). A node's neighbours at the time
 * when it goes are its star; all of them go later. The first of them to go is its parent, and what
 * changes at a node can change only what lies on the way from parent to parent above it.
 */
export interface Plan {
  /** Place in the order, by node. */
  readonly place: Int32Array;
  /** Node, by place. */
  readonly nodeAt: Int32Array;
  /** By place: the places of its star, rising; the first is its parent. */
  readonly stars: readonly Int32Array[];
  /** By place: the earlier places in whose stars it is, rising. */
  readonly givers: readonly Int32Array[];
  /** By place: the branches whose earlier end it is, rising. */
  readonly branches: readonly Int32Array[];
  /** By branch: place of its later end; -1 where both ends are one node. */
  readonly late: Int32Array;
  /** By branch: place of its earlier end; -1 where both ends are one node. */
  readonly early: Int32Array;
}

interface Ends {
  readonly a: number;
  readonly b: number;
}

/** `last`: nodes that go last, the very last first: what hangs together with one counts from it. */
export function planElimination(
  nodeCount: number,
  ends: readonly Ends[],
  last: readonly number[],
): Plan {
  const neighbours = Array.from({ length: nodeCount }, () => new Set<number>());
  for (const { a, b } of ends) {
    if (a === b) continue;
    neighbours[a]?.add(b);
    neighbours[b]?.add(a);
  }
  const kept = [...new Set(last)];
  const { nodeAt, stars } = eliminate(neighbours, kept);
  const place = new Int32Array(nodeCount);
  nodeAt.forEach((node, at) => {
    place[node] = at;
  });
  for (const star of stars) {
    for (let i = 0; i < star.length; i++) star[i] = place[star[i] as number] as number;
    star.sort();
  }
  const { early, late } = placeEnds(place, ends);
  return {
    place,
    nodeAt,
    stars,
    givers: turnRound(stars),
    branches: gather(nodeCount, early),
    early,
    late,
  };
}

/** The plan with further branches, e.g. a meter's: only what lies above their ends is new. */
export function withBranches(plan: Plan, ends: readonly Ends[]): Plan {
  if (ends.length === 0) return plan;
  const stars = [...plan.stars];
  const givers = [...plan.givers];
  const branches = [...plan.branches];
  const more = placeEnds(plan.place, ends);
  const known = plan.early.length;
  for (let index = 0; index < ends.length; index++) {
    const from = more.early[index] as number;
    if (from < 0) continue;
    branches[from] = appended(branches[from] as Int32Array, known + index);
    reach(stars, givers, from, Int32Array.of(more.late[index] as number));
  }
  return {
    ...plan,
    stars,
    givers,
    branches,
    early: joined(plan.early, more.early),
    late: joined(plan.late, more.late),
  };
}

/** Puts `wanted` into the star of `from`, and what that brings into the stars above it. */
function reach(stars: Int32Array[], givers: Int32Array[], from: number, wanted: Int32Array): void {
  let at = from;
  let coming = wanted;
  for (;;) {
    const own = stars[at] as Int32Array;
    const fresh = coming.filter((place) => place > at && !own.includes(place));
    if (fresh.length === 0) return;
    const star = joined(own, fresh).sort();
    stars[at] = star;
    for (const place of fresh) givers[place] = appended(givers[place] as Int32Array, at).sort();
    at = star[0] as number;
    coming = star;
  }
}

/** Star of each node, as nodes, in the order in which they went. */
function eliminate(
  neighbours: readonly Set<number>[],
  last: readonly number[],
): { nodeAt: Int32Array; stars: Int32Array[] } {
  const nodeCount = neighbours.length;
  const nodeAt = new Int32Array(nodeCount);
  const stars: Int32Array[] = [];
  const done = new Uint8Array(nodeCount);
  const isLast = new Uint8Array(nodeCount);
  for (const node of last) isLast[node] = 1;
  // nodes by degree; an entry is stale when the node has moved on or is done
  const byDegree: number[][] = [];
  let lowest = 0;
  const enter = (node: number) => {
    const degree = neighbours[node]?.size ?? 0;
    const bucket = byDegree[degree] ?? [];
    bucket.push(node);
    byDegree[degree] = bucket;
    lowest = Math.min(lowest, degree);
  };
  const go = (node: number) => {
    done[node] = 1;
    const star = Int32Array.from(neighbours[node] as Set<number>);
    nodeAt[stars.length] = node;
    stars.push(star);
    for (let i = 0; i < star.length; i++) {
      const own = neighbours[star[i] as number] as Set<number>;
      own.delete(node);
      for (let j = 0; j < star.length; j++) if (i !== j) own.add(star[j] as number);
    }
    return star;
  };
  for (let node = 0; node < nodeCount; node++) if (!isLast[node]) enter(node);
  while (lowest < byDegree.length) {
    const node = byDegree[lowest]?.pop();
    if (node === undefined) {
      lowest++;
      continue;
    }
    if (done[node] || neighbours[node]?.size !== lowest) continue;
    for (const next of go(node)) if (!isLast[next]) enter(next);
  }
  for (const node of [...last].reverse()) go(node);
  return { nodeAt, stars };
}

function placeEnds(place: Int32Array, ends: readonly Ends[]) {
  const early = new Int32Array(ends.length).fill(-1);
  const late = new Int32Array(ends.length).fill(-1);
  ends.forEach(({ a, b }, index) => {
    if (a === b) return;
    const one = place[a] as number;
    const other = place[b] as number;
    early[index] = Math.min(one, other);
    late[index] = Math.max(one, other);
  });
  return { early, late };
}

/** For each value from 0 to `count`, the indices that have it, rising; negative values are left out. */
function gather(count: number, values: Int32Array): Int32Array[] {
  const starts = new Int32Array(count + 1);
  for (const value of values) if (value >= 0) starts[value + 1] = (starts[value + 1] as number) + 1;
  for (let at = 0; at < count; at++)
    starts[at + 1] = (starts[at + 1] as number) + (starts[at] as number);
  const all = new Int32Array(starts[count] as number);
  const next = starts.slice();
  values.forEach((value, index) => {
    if (value < 0) return;
    const at = next[value] as number;
    all[at] = index;
    next[value] = at + 1;
  });
  return Array.from({ length: count }, (_, at) => all.subarray(starts[at], starts[at + 1]));
}

/** From who has whom in its star to who is in whose. */
function turnRound(stars: readonly Int32Array[]): Int32Array[] {
  const total = stars.reduce((sum, star) => sum + star.length, 0);
  const members = new Int32Array(total);
  const owners = new Int32Array(total);
  let at = 0;
  stars.forEach((star, owner) => {
    members.set(star, at);
    owners.fill(owner, at, at + star.length);
    at += star.length;
  });
  return gather(stars.length, members).map((slots) => slots.map((slot) => owners[slot] as number));
}

function appended(array: Int32Array, value: number): Int32Array {
  const longer = new Int32Array(array.length + 1);
  longer.set(array);
  longer[array.length] = value;
  return longer;
}

function joined(first: Int32Array, second: Int32Array): Int32Array {
  const both = new Int32Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
