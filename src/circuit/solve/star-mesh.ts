/**
 * The linear heart of the solver: node voltages of a network of conductances, by eliminating one
 * node after another, the one with the fewest neighbours first (an LDLᵀ factorisation in minimum
 * degree order).
 *
 * Eliminating a node replaces its star of conductances by the equal mesh between its neighbours.
 * Only sums, products and quotients of positive numbers occur, never a difference, so that a
 * 10 MΩ meter keeps its digits beside a milliohm wire, and a pivot is zero exactly where a node
 * hangs on nothing. No helper conductance to ground is ever added: what floats, floats.
 */

/** Conductance in siemens between two nodes, above zero. */
export interface Conductor {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

export interface Factored {
  /** Number of the connected piece that each node belongs to. */
  readonly piece: Int32Array;
  /** For each piece, the node whose voltage is 0. */
  readonly references: readonly number[];
  /** Volts of each node against its piece's reference, for amps pushed into each node. */
  solve(injected: Float64Array): Float64Array;
}

/**
 * `preferred`: nodes to be taken as a piece's reference, the first that lies in it; otherwise its
 * busiest node.
 */
export function factor(
  nodeCount: number,
  conductors: readonly Conductor[],
  preferred: readonly number[] = [],
): Factored {
  const neighbours: Map<number, number>[] = Array.from({ length: nodeCount }, () => new Map());
  const link = (from: number, to: number, siemens: number) => {
    const row = neighbours[from] as Map<number, number>;
    row.set(to, (row.get(to) ?? 0) + siemens);
  };
  for (const { a, b, siemens } of conductors) {
    if (a === b) continue;
    link(a, b, siemens);
    link(b, a, siemens);
  }

  const piece = findPieces(neighbours);
  const references = chooseReferences(neighbours, piece, preferred);
  const isReference = new Uint8Array(nodeCount);
  for (const node of references) isReference[node] = 1;

  const steps = eliminate(neighbours, isReference);
  return { piece, references, solve: (injected) => substitute(nodeCount, steps, injected) };
}

/** One eliminated node: its star as it was then. */
interface Step {
  readonly node: number;
  readonly sum: number;
  readonly to: Int32Array;
  readonly siemens: Float64Array;
}

function findPieces(neighbours: readonly ReadonlyMap<number, number>[]): Int32Array {
  const piece = new Int32Array(neighbours.length).fill(-1);
  let count = 0;
  for (let start = 0; start < neighbours.length; start++) {
    if (piece[start] !== -1) continue;
    const stack = [start];
    piece[start] = count;
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      for (const next of neighbours[node]?.keys() ?? []) {
        if (piece[next] !== -1) continue;
        piece[next] = count;
        stack.push(next);
      }
    }
    count++;
  }
  return piece;
}

function chooseReferences(
  neighbours: readonly ReadonlyMap<number, number>[],
  piece: Int32Array,
  preferred: readonly number[],
): number[] {
  const chosen: number[] = [];
  const degree = (node: number | undefined) =>
    node === undefined ? -1 : (neighbours[node]?.size ?? 0);
  for (let node = 0; node < neighbours.length; node++) {
    const own = piece[node] as number;
    if (degree(node) > degree(chosen[own])) chosen[own] = node;
  }
  for (const node of [...preferred].reverse()) {
    const own = piece[node];
    if (own !== undefined) chosen[own] = node;
  }
  return chosen;
}

/** Consumes `neighbours`. */
function eliminate(neighbours: readonly Map<number, number>[], isReference: Uint8Array): Step[] {
  const steps: Step[] = [];
  const done = new Uint8Array(neighbours.length);
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
  for (let node = 0; node < neighbours.length; node++) if (!isReference[node]) enter(node);

  while (lowest < byDegree.length) {
    const node = byDegree[lowest]?.pop();
    if (node === undefined) {
      lowest++;
      continue;
    }
    const star = neighbours[node] as Map<number, number>;
    if (done[node] || star.size !== lowest) continue;
    done[node] = 1;
    const to = Int32Array.from(star.keys());
    const siemens = Float64Array.from(star.values());
    let sum = 0;
    for (const value of siemens) sum += value;
    steps.push({ node, sum, to, siemens });
    for (let i = 0; i < to.length; i++) {
      const row = neighbours[to[i] as number] as Map<number, number>;
      row.delete(node);
      for (let j = 0; j < to.length; j++) {
        if (i === j) continue;
        const other = to[j] as number;
        const mesh = ((siemens[i] as number) * (siemens[j] as number)) / sum;
        row.set(other, (row.get(other) ?? 0) + mesh);
      }
    }
    for (const next of to) if (!isReference[next]) enter(next);
  }
  return steps;
}

function substitute(nodeCount: number, steps: readonly Step[], injected: Float64Array) {
  const amps = Float64Array.from(injected);
  for (const { node, sum, to, siemens } of steps) {
    const share = (amps[node] as number) / sum;
    if (share === 0) continue;
    for (let i = 0; i < to.length; i++) {
      const next = to[i] as number;
      amps[next] = (amps[next] as number) + share * (siemens[i] as number);
    }
  }
  const volts = new Float64Array(nodeCount);
  for (let at = steps.length - 1; at >= 0; at--) {
    const { node, sum, to, siemens } = steps[at] as Step;
    let total = amps[node] as number;
    for (let i = 0; i < to.length; i++) {
      total += (siemens[i] as number) * (volts[to[i] as number] as number);
    }
    volts[node] = total / sum;
  }
  return volts;
}
