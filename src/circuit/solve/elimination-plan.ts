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
  readonly stars: Lists;
  /** By place: where it stands in the stars of earlier places, rising, as indices of `stars.all`. */
  readonly givers: Lists;
  /** Whose star it is, by index of `stars.all`. */
  readonly owner: Int32Array;
  /** By place: the branches whose earlier end it is, rising. */
  readonly branches: Lists;
  /** By branch: place of its later end; -1 where both ends are one node. */
  readonly late: Int32Array;
  /** By branch: place of its earlier end; -1 where both ends are one node. */
  readonly early: Int32Array;
}

/** Lists of whole numbers, one after another: list `n` is `all` from `starts[n]` to `starts[n + 1]`. */
export interface Lists {
  readonly starts: Int32Array;
  readonly all: Int32Array;
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
  const { nodeAt, stars } = eliminate(nodeCount, ends, [...new Set(last)]);
  const place = new Int32Array(nodeCount);
  nodeAt.forEach((node, at) => {
    place[node] = at;
  });
  for (const star of stars) {
    for (let i = 0; i < star.length; i++) star[i] = place[star[i] as number] as number;
    star.sort();
  }
  const { early, late } = placeEnds(place, ends);
  return planOf({ place, nodeAt, early, late }, flat(stars));
}

/** The plan with further branches, e.g. a meter's: only what lies above their ends is new. */
export function withBranches(plan: Plan, ends: readonly Ends[]): Plan {
  if (ends.length === 0) return plan;
  const more = placeEnds(plan.place, ends);
  const early = joined(plan.early, more.early);
  const late = joined(plan.late, more.late);
  const stars = grown(plan.stars, more.early, more.late);
  const { place, nodeAt } = plan;
  const branches = withMore(plan.branches, more.early, plan.early.length);
  if (stars === plan.stars) return { ...plan, early, late, branches };
  return { place, nodeAt, early, late, stars, ...givingIn(stars), branches };
}

/** A branch that lies between other nodes than in the plan. */
export interface MovedEnds extends Ends {
  /** Of the branch. */
  readonly index: number;
}

/**
 * The plan with `more` nodes behind its last one, which go first of all, and with some branches
 * between other nodes than before. All that went before goes in the same order after them.
 */
export function withMoved(plan: Plan, more: number, moved: readonly MovedEnds[]): Plan {
  const before = plan.nodeAt.length;
  const place = new Int32Array(before + more);
  const nodeAt = new Int32Array(before + more);
  for (let node = 0; node < before; node++) place[node] = (plan.place[node] as number) + more;
  for (let n = 0; n < more; n++) {
    place[before + n] = n;
    nodeAt[n] = before + n;
  }
  nodeAt.set(plan.nodeAt, more);
  const starts = new Int32Array(before + more + 1);
  starts.set(plan.stars.starts, more);
  const stars = { starts, all: plan.stars.all.map((at) => at + more) };
  const shifted = (at: number) => (at < 0 ? at : at + more);
  const early = plan.early.map(shifted);
  const late = plan.late.map(shifted);
  const ends = placeEnds(place, moved);
  moved.forEach(({ index }, at) => {
    early[index] = ends.early[at] as number;
    late[index] = ends.late[at] as number;
  });
  return planOf({ place, nodeAt, early, late }, grown(stars, ends.early, ends.late));
}

/** The stars with further branches between these places: what comes into a star comes into those above it too. */
function grown(stars: Lists, early: Int32Array, late: Int32Array): Lists {
  const longer = new Map<number, Int32Array>();
  const starOf = (place: number) => longer.get(place) ?? listAt(stars, place);
  for (let index = 0; index < early.length; index++) {
    let at = early[index] as number;
    if (at < 0) continue;
    let coming: Int32Array = Int32Array.of(late[index] as number);
    for (;;) {
      const own = starOf(at);
      const fresh = coming.filter((place) => place > at && !own.includes(place));
      if (fresh.length === 0) break;
      const star = joined(own, fresh).sort();
      longer.set(at, star);
      at = star[0] as number;
      coming = star;
    }
  }
  return longer.size === 0 ? stars : withLists(stars, longer);
}

/** The lists with the numbers from `first` on added, each to the list that `values` names. */
function withMore(lists: Lists, values: Int32Array, first: number): Lists {
  const longer = new Map<number, Int32Array>();
  for (let index = 0; index < values.length; index++) {
    const value = values[index] as number;
    if (value < 0) continue;
    const own = longer.get(value) ?? listAt(lists, value);
    longer.set(value, joined(own, Int32Array.of(first + index)));
  }
  return longer.size === 0 ? lists : withLists(lists, longer);
}

const planOf = (order: Pick<Plan, "place" | "nodeAt" | "early" | "late">, stars: Lists): Plan => ({
  ...order,
  stars,
  ...givingIn(stars),
  branches: gather(order.nodeAt.length, order.early),
});

function givingIn(stars: Lists): Pick<Plan, "owner" | "givers"> {
  const count = stars.starts.length - 1;
  const owner = new Int32Array(stars.all.length);
  for (let place = 0; place < count; place++) {
    const last = stars.starts[place + 1] as number;
    for (let at = stars.starts[place] as number; at < last; at++) owner[at] = place;
  }
  return { owner, givers: gather(count, stars.all) };
}

/** Star of each node, as nodes, in the order in which they went. */
function eliminate(
  nodeCount: number,
  ends: readonly Ends[],
  last: readonly number[],
): { nodeAt: Int32Array; stars: Int32Array[] } {
  const isLast = new Uint8Array(nodeCount);
  for (const node of last) isLast[node] = 1;
  // those that go last are in others' sets, but need none of their own: the whole machine is in them
  const neighbours = Array.from({ length: nodeCount }, () => new Set<number>());
  const link = (from: number, to: number) => {
    if (!isLast[from]) (neighbours[from] as Set<number>).add(to);
  };
  for (const { a, b } of ends) {
    if (a === b) continue;
    link(a, b);
    link(b, a);
  }
  const nodeAt = new Int32Array(nodeCount);
  const stars: Int32Array[] = [];
  const done = new Uint8Array(nodeCount);
  // nodes by degree; an entry is stale when the node has moved on or is done
  const byDegree: number[][] = [];
  let lowest = 0;
  const enter = (node: number) => {
    const degree = neighbours[node]?.size ?? 0;
    const bucket = byDegree[degree];
    if (bucket) bucket.push(node);
    else byDegree[degree] = [node];
    if (degree < lowest) lowest = degree;
  };
  for (let node = 0; node < nodeCount; node++) if (!isLast[node]) enter(node);
  while (lowest < byDegree.length) {
    const node = byDegree[lowest]?.pop();
    if (node === undefined) {
      lowest++;
      continue;
    }
    const own = neighbours[node] as Set<number>;
    if (done[node] || own.size !== lowest) continue;
    done[node] = 1;
    const star = Int32Array.from(own);
    nodeAt[stars.length] = node;
    stars.push(star);
    for (let i = 0; i < star.length; i++) {
      const next = star[i] as number;
      if (isLast[next]) continue;
      (neighbours[next] as Set<number>).delete(node);
      for (let j = 0; j < star.length; j++) if (i !== j) link(next, star[j] as number);
      enter(next);
    }
    own.clear();
  }
  for (let at = last.length - 1; at >= 0; at--) {
    nodeAt[stars.length] = last[at] as number;
    stars.push(Int32Array.from(last.slice(0, at)));
  }
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
function gather(count: number, values: Int32Array): Lists {
  const starts = new Int32Array(count + 1);
  for (let index = 0; index < values.length; index++) {
    const value = values[index] as number;
    if (value >= 0) starts[value + 1] = (starts[value + 1] as number) + 1;
  }
  for (let at = 0; at < count; at++)
    starts[at + 1] = (starts[at + 1] as number) + (starts[at] as number);
  const all = new Int32Array(starts[count] as number);
  const next = starts.slice();
  for (let index = 0; index < values.length; index++) {
    const value = values[index] as number;
    if (value < 0) continue;
    const at = next[value] as number;
    all[at] = index;
    next[value] = at + 1;
  }
  return { starts, all };
}

const listAt = ({ starts, all }: Lists, at: number): Int32Array =>
  all.subarray(starts[at], starts[at + 1]);

function flat(lists: readonly Int32Array[]): Lists {
  const starts = new Int32Array(lists.length + 1);
  lists.forEach((list, at) => {
    starts[at + 1] = (starts[at] as number) + list.length;
  });
  const all = new Int32Array(starts[lists.length] as number);
  lists.forEach((list, at) => {
    all.set(list, starts[at]);
  });
  return { starts, all };
}

/** The lists with some of them exchanged; what lies between two of those is copied in one piece. */
function withLists(lists: Lists, exchanged: ReadonlyMap<number, Int32Array>): Lists {
  const count = lists.starts.length - 1;
  const at = [...exchanged.keys()].sort((a, b) => a - b);
  const longer = at.reduce(
    (sum, place) => sum + (exchanged.get(place)?.length ?? 0) - listAt(lists, place).length,
    0,
  );
  const starts = new Int32Array(count + 1);
  const all = new Int32Array(lists.all.length + longer);
  let from = 0;
  let shift = 0;
  const copyUpTo = (place: number) => {
    const begin = lists.starts[from] as number;
    all.set(lists.all.subarray(begin, lists.starts[place]), begin + shift);
    for (let next = from; next <= place; next++)
      starts[next] = (lists.starts[next] as number) + shift;
  };
  for (const place of at) {
    copyUpTo(place);
    const list = exchanged.get(place) as Int32Array;
    all.set(list, starts[place]);
    shift += list.length - listAt(lists, place).length;
    from = place + 1;
  }
  copyUpTo(count);
  return { starts, all };
}

function joined(first: Int32Array, second: Int32Array): Int32Array {
  const both = new Int32Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
