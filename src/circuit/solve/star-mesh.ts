import { type Plan, planElimination } from "./elimination-plan.ts";

/**
 * The linear heart of the solver: node voltages of a network of conductances, by eliminating one
 * node after another (an LDLᵀ factorisation).
 *
 * Eliminating a node replaces its star of conductances by the equal mesh between its neighbours.
 * Only sums, products and quotients of positive numbers occur, never a difference, so that a
 * 10 MΩ meter keeps its digits beside a milliohm wire, and a star's sum is zero exactly where a
 * node hangs on nothing that goes later. No helper conductance to ground is ever added: what
 * floats, floats.
 *
 * Nothing here is changed once made: `changed` shares what a change does not reach, and gives bit
 * for bit what `meshOf` would.
 */
export interface Mesh {
  readonly plan: Plan;
  /** By place: siemens of its star when it goes, in the plan's order. */
  readonly siemens: readonly Float64Array[];
  /** By place: their sum. */
  readonly sums: Float64Array;
}

/** `siemens` by branch, 0 for one that does not conduct. */
export function meshOf(plan: Plan, siemens: Float64Array): Mesh {
  const count = plan.stars.length;
  const mesh = { plan, siemens: new Array<Float64Array>(count), sums: new Float64Array(count) };
  const sum = new Float64Array(count);
  for (let place = 0; place < count; place++) fillStar(mesh, place, siemens, sum);
  return mesh;
}

/**
 * The mesh after the siemens of some branches have changed. `plan` may have branches that `mesh`
 * had not, if they are among the changed.
 */
export function changedMesh(
  mesh: Mesh,
  plan: Plan,
  siemens: Float64Array,
  branches: readonly number[],
): Mesh {
  const dirty = reached(plan, branches);
  if (dirty.length * 2 > plan.stars.length) return meshOf(plan, siemens);
  const next = { plan, siemens: [...mesh.siemens], sums: mesh.sums.slice() };
  const sum = new Float64Array(plan.stars.length);
  for (const place of dirty) fillStar(next, place, siemens, sum);
  return next;
}

/** Places that a change of these branches reaches, rising. */
function reached(plan: Plan, branches: readonly number[]): Int32Array {
  const seen = new Set<number>();
  for (const branch of branches) {
    let place: number | undefined = plan.early[branch];
    while (place !== undefined && place >= 0 && !seen.has(place)) {
      seen.add(place);
      place = plan.stars[place]?.[0];
    }
  }
  return Int32Array.from(seen).sort();
}

/** What one node's star has: its own branches, and what the stars that went before left between. */
function fillStar(
  { plan, siemens, sums }: { plan: Plan; siemens: Float64Array[]; sums: Float64Array },
  place: number,
  ofBranch: Float64Array,
  sum: Float64Array,
): void {
  const branches = plan.branches[place] as Int32Array;
  for (let i = 0; i < branches.length; i++) {
    const branch = branches[i] as number;
    const far = plan.late[branch] as number;
    sum[far] = (sum[far] as number) + (ofBranch[branch] as number);
  }
  const givers = plan.givers[place] as Int32Array;
  for (let i = 0; i < givers.length; i++) {
    const giver = givers[i] as number;
    const total = sums[giver] as number;
    if (total === 0) continue;
    const star = plan.stars[giver] as Int32Array;
    const given = siemens[giver] as Float64Array;
    const own = star.indexOf(place);
    const share = (given[own] as number) / total;
    if (share === 0) continue;
    for (let j = own + 1; j < star.length; j++) {
      const far = star[j] as number;
      sum[far] = (sum[far] as number) + share * (given[j] as number);
    }
  }
  const star = plan.stars[place] as Int32Array;
  const own = new Float64Array(star.length);
  let total = 0;
  for (let i = 0; i < star.length; i++) {
    const far = star[i] as number;
    const value = sum[far] as number;
    sum[far] = 0;
    own[i] = value;
    total += value;
  }
  siemens[place] = own;
  sums[place] = total;
}

/** Volts of each node against its piece's reference, for amps pushed into each node. */
export function voltsOf({ plan, siemens, sums }: Mesh, injected: Float64Array): Float64Array {
  const count = sums.length;
  const { nodeAt, stars } = plan;
  const amps = new Float64Array(count);
  for (let place = 0; place < count; place++)
    amps[place] = injected[nodeAt[place] as number] as number;
  for (let place = 0; place < count; place++) {
    const total = sums[place] as number;
    if (total === 0) continue;
    const share = (amps[place] as number) / total;
    if (share === 0) continue;
    const star = stars[place] as Int32Array;
    const own = siemens[place] as Float64Array;
    for (let i = 0; i < star.length; i++) {
      const far = star[i] as number;
      amps[far] = (amps[far] as number) + share * (own[i] as number);
    }
  }
  const volts = new Float64Array(count);
  for (let place = count - 1; place >= 0; place--) {
    const total = sums[place] as number;
    if (total === 0) continue;
    const star = stars[place] as Int32Array;
    const own = siemens[place] as Float64Array;
    let sum = amps[place] as number;
    for (let i = 0; i < star.length; i++) {
      sum += (own[i] as number) * (volts[nodeAt[star[i] as number] as number] as number);
    }
    volts[nodeAt[place] as number] = sum / total;
  }
  return volts;
}

/** The connected piece that each node belongs to, by number, and the node that each counts from. */
export function piecesOf({ plan, siemens, sums }: Mesh): {
  piece: Int32Array;
  references: readonly number[];
} {
  const count = sums.length;
  const piece = new Int32Array(count);
  const references: number[] = [];
  for (let place = count - 1; place >= 0; place--) {
    const node = plan.nodeAt[place] as number;
    if (sums[place] === 0) {
      piece[node] = references.length;
      references.push(node);
      continue;
    }
    const own = siemens[place] as Float64Array;
    let i = 0;
    while (own[i] === 0) i++;
    const far = (plan.stars[place] as Int32Array)[i] as number;
    piece[node] = piece[plan.nodeAt[far] as number] as number;
  }
  return { piece, references };
}

/** A network ready to be asked. */
export interface Factored {
  /** Number of the connected piece that each node belongs to. */
  readonly piece: Int32Array;
  /** For each piece, the node whose voltage is 0. */
  readonly references: readonly number[];
  /** Volts of each node against its piece's reference, for amps pushed into each node. */
  solve(injected: Float64Array): Float64Array;
}

export function factoredOf(mesh: Mesh): Factored {
  let pieces: ReturnType<typeof piecesOf> | null = null;
  const found = () => {
    pieces ??= piecesOf(mesh);
    return pieces;
  };
  return {
    get piece() {
      return found().piece;
    },
    get references() {
      return found().references;
    },
    solve: (injected) => voltsOf(mesh, injected),
  };
}

/** Conductance in siemens between two nodes, above zero. */
export interface Conductor {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

/** `preferred`: nodes to be taken as a piece's reference, the first that lies in it. */
export const factor = (
  nodeCount: number,
  conductors: readonly Conductor[],
  preferred: readonly number[] = [],
): Factored =>
  factoredOf(
    meshOf(
      planElimination(nodeCount, conductors, preferred),
      Float64Array.from(conductors, ({ siemens }) => siemens),
    ),
  );
