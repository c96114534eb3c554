import type { Branch, OperatingPoint } from "../solve/index.ts";
import { Groups } from "./groups.ts";

/** Ω below which two nodes count as one here. */
const ONE_POINT = 1e-3;
/** Ω on the way to the reference below which a node is held: what is pushed into it moves nothing. */
const HELD = 0.1;

/**
 * A piece of circuit as seen from its reference: points that are held fast by little resistance,
 * and between them islands, which feel nothing of each other. A push at one point is felt only on
 * its own island, and there as if all held points were the reference: that is less than the truth,
 * never more, by `HELD` ohms at most.
 */
export interface Islands {
  /** Of each node: the node that stands for all that are one point with it. */
  readonly pointOf: Int32Array;
  /** Of each point: its island; -1 where it is held, or no part of the piece. */
  readonly islandOf: Int32Array;
  /** Of each point: its place among the points of its island. */
  readonly placeOf: Int32Array;
  readonly points: readonly Int32Array[];
  /** Of each held point: ohms on its way to the reference, which no push anywhere makes it feel more than. */
  readonly heldOhms: Float64Array;
  /** Of each island: the most `heldOhms` on its shore: what a push on it is felt elsewhere at most. */
  readonly shore: Float64Array;
  /** Of each point: where its ways begin in `to` and `ohms`; they end where the next one's begin. */
  readonly start: Int32Array;
  readonly to: Int32Array;
  readonly ohms: Float64Array;
}

export function findIslands(
  nodeCount: number,
  branches: readonly Branch[],
  point: OperatingPoint,
  reference: number,
): Islands {
  const clumps = new Groups(nodeCount);
  for (let index = 0; index < branches.length; index++) {
    const { a, b } = branches[index] as Branch;
    if ((point.ohms[index] as number) <= ONE_POINT) clumps.join(a, b);
  }
  const pointOf = new Int32Array(nodeCount);
  for (let node = 0; node < nodeCount; node++) pointOf[node] = clumps.of(node);
  const { start, to, ohms } = waysBetween(nodeCount, branches, point, pointOf);
  const heldOhms = heldFrom(pointOf[reference] as number, start, to, ohms);

  const islandOf = new Int32Array(nodeCount).fill(-1);
  const placeOf = new Int32Array(nodeCount);
  const points: Int32Array[] = [];
  const { piece } = point.factored;
  const shore: number[] = [];
  const members: number[] = [];
  for (let first = 0; first < nodeCount; first++) {
    if (pointOf[first] !== first || islandOf[first] !== -1) continue;
    if (Number.isFinite(heldOhms[first])) continue;
    if (piece[first] !== piece[reference]) continue;
    members.length = 0;
    const meet = (one: number) => {
      islandOf[one] = points.length;
      placeOf[one] = members.length;
      members.push(one);
    };
    meet(first);
    let most = 0;
    for (const from of members) {
      for (let at = start[from] as number; at < (start[from + 1] as number); at++) {
        const next = to[at] as number;
        const far = heldOhms[next] as number;
        if (Number.isFinite(far)) most = Math.max(most, far);
        else if (islandOf[next] === -1) meet(next);
      }
    }
    points.push(Int32Array.from(members));
    shore.push(most);
  }
  const ways = { start, to, ohms };
  return {
    pointOf,
    islandOf,
    placeOf,
    points,
    heldOhms,
    shore: Float64Array.from(shore),
    ...ways,
  };
}

/** All that conducts between different points, from either end. */
function waysBetween(
  nodeCount: number,
  branches: readonly Branch[],
  point: OperatingPoint,
  pointOf: Int32Array,
): Pick<Islands, "start" | "to" | "ohms"> {
  const start = new Int32Array(nodeCount + 1);
  const each = (visit: (a: number, b: number, ohms: number) => void) => {
    for (let index = 0; index < branches.length; index++) {
      const own = point.ohms[index] as number;
      if (!Number.isFinite(own)) continue;
      const branch = branches[index] as Branch;
      const a = pointOf[branch.a] as number;
      const b = pointOf[branch.b] as number;
      if (a !== b) visit(a, b, own);
    }
  };
  each((a, b) => {
    start[a + 1] = (start[a + 1] as number) + 1;
    start[b + 1] = (start[b + 1] as number) + 1;
  });
  for (let node = 0; node < nodeCount; node++)
    start[node + 1] = (start[node + 1] as number) + (start[node] as number);
  const filled = start.slice();
  const to = new Int32Array(start[nodeCount] as number);
  const ohms = new Float64Array(to.length);
  const put = (from: number, far: number, own: number) => {
    const at = filled[from] as number;
    filled[from] = at + 1;
    to[at] = far;
    ohms[at] = own;
  };
  each((a, b, own) => {
    put(a, b, own);
    put(b, a, own);
  });
  return { start, to, ohms };
}

/** Ω to the reference along the best way, for all points within `HELD`; Infinity for the others. */
function heldFrom(
  reference: number,
  start: Int32Array,
  to: Int32Array,
  ohms: Float64Array,
): Float64Array {
  const far = new Float64Array(start.length - 1).fill(Number.POSITIVE_INFINITY);
  far[reference] = 0;
  // each point is looked at again whenever a better way to it turns up
  const queue = [reference];
  for (const from of queue) {
    const own = far[from] as number;
    for (let at = start[from] as number; at < (start[from + 1] as number); at++) {
      const next = to[at] as number;
      const way = own + (ohms[at] as number);
      if (way > HELD || way >= (far[next] as number)) continue;
      far[next] = way;
      queue.push(next);
    }
  }
  return far;
}

/**
 * Ω that each of an island's points feels of a push at one of them: a row for each of `pushed`, by
 * the points' places.
 */
export function feltOnIsland(
  { points, placeOf, islandOf, start, to, ohms }: Islands,
  island: number,
  pushed: readonly number[],
): readonly Float64Array[] {
  const own = points[island] as Int32Array;
  const size = own.length;
  const matrix = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    const from = own[row] as number;
    for (let at = start[from] as number; at < (start[from + 1] as number); at++) {
      const siemens = 1 / (ohms[at] as number);
      const next = to[at] as number;
      matrix[row * size + row] = (matrix[row * size + row] as number) + siemens;
      if (islandOf[next] !== island) continue;
      const column = row * size + (placeOf[next] as number);
      matrix[column] = (matrix[column] as number) - siemens;
    }
  }
  factorInPlace(matrix, size);
  return pushed.map((point) => {
    const volts = new Float64Array(size);
    volts[placeOf[point] as number] = 1;
    return solved(matrix, volts);
  });
}

/** Cholesky: the lower triangle of the symmetric, positive matrix becomes its root. */
function factorInPlace(matrix: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j] as number;
      for (let k = 0; k < j; k++)
        sum -= (matrix[i * size + k] as number) * (matrix[j * size + k] as number);
      matrix[i * size + j] =
        i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (matrix[j * size + j] as number);
    }
  }
}

function solved(matrix: Float64Array, volts: Float64Array): Float64Array {
  const size = volts.length;
  for (let i = 0; i < size; i++) {
    let sum = volts[i] as number;
    for (let k = 0; k < i; k++) sum -= (matrix[i * size + k] as number) * (volts[k] as number);
    volts[i] = sum / (matrix[i * size + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = volts[i] as number;
    for (let k = i + 1; k < size; k++)
      sum -= (matrix[k * size + i] as number) * (volts[k] as number);
    volts[i] = sum / (matrix[i * size + i] as number);
  }
  return volts;
}
