import { type Lists, type Plan, planElimination } from "./elimination-plan.ts";

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
 * Nothing here is changed once made: `changedMesh` shares what a change does not reach, and gives
 * bit for bit what `meshOf` would.
 */
export interface Mesh {
  readonly plan: Plan;
  /** Siemens of every place's star when it goes, by index of `plan.stars.all`. */
  readonly siemens: Float64Array;
  /** By place: their sum. */
  readonly sums: Float64Array;
}

/** Room to work in, used again and again: fresh pages cost more than the sums done on them. */
export class Workspace {
  /** By place; all 0 between uses. */
  readonly sum: Float64Array;
  readonly seen: Uint8Array;
  /** Amps pushed into each place. */
  readonly amps: Float64Array;

  constructor(nodeCount: number) {
    this.sum = new Float64Array(nodeCount);
    this.seen = new Uint8Array(nodeCount);
    this.amps = new Float64Array(nodeCount);
  }
}

/** `siemens` by branch, 0 for one that does not conduct. */
export function meshOf(plan: Plan, siemens: Float64Array): Mesh {
  const count = plan.nodeAt.length;
  const mesh = {
    plan,
    siemens: new Float64Array(plan.stars.all.length),
    sums: new Float64Array(count),
  };
  const sum = new Float64Array(count);
  for (let place = 0; place < count; place++) fillStar(mesh, place, siemens, sum);
  return mesh;
}

/**
 * The mesh after the siemens of some branches have changed. `plan` may have branches that `mesh`
 * had not, if they are among the changed, and nodes that it had not, which then go first. `mine`:
 * the caller alone holds `mesh` and gives it up.
 */
export function changedMesh(
  mesh: Mesh,
  plan: Plan,
  siemens: Float64Array,
  branches: readonly number[],
  work: Workspace,
  mine = false,
): Mesh {
  const next = plan === mesh.plan ? (mine ? mesh : copyOf(mesh)) : laidOut(mesh, plan);
  const from = places(plan, branches);
  // where a branch lay before something has changed as well
  if (mesh.sums.length < next.sums.length)
    for (const place of places(mesh.plan, branches))
      from.push(place + next.sums.length - mesh.sums.length);
  for (const place of reached(plan, from, work.seen)) fillStar(next, place, siemens, work.sum);
  return next;
}

/** Places of the earlier ends of branches. */
const places = ({ early }: Plan, branches: readonly number[]): number[] => {
  const found: number[] = [];
  for (const branch of branches) {
    const place = early[branch] ?? -1;
    if (place >= 0) found.push(place);
  }
  return found;
};

const copyOf = ({ plan, siemens, sums }: Mesh): Mesh => ({
  plan,
  siemens: siemens.slice(),
  sums: sums.slice(),
});

/** The same for a plan whose stars have grown, those of further nodes first; those are left to be filled. */
function laidOut(mesh: Mesh, plan: Plan): Mesh {
  const siemens = new Float64Array(plan.stars.all.length);
  const count = mesh.sums.length;
  const from = mesh.plan.stars.starts;
  const more = plan.nodeAt.length - count;
  const to = more === 0 ? plan.stars.starts : plan.stars.starts.subarray(more);
  let start = 0;
  for (let place = 0; place < count; place++) {
    const shift = (to[place + 1] as number) - (from[place + 1] as number);
    if (shift === (to[place] as number) - (from[place] as number)) continue;
    // up to this grown star all lie as far apart as before
    siemens.set(mesh.siemens.subarray(from[start], from[place]), to[start]);
    start = place + 1;
  }
  siemens.set(mesh.siemens.subarray(from[start]), to[start]);
  const sums = new Float64Array(count + more);
  sums.set(mesh.sums, more);
  return { plan, siemens, sums };
}

/** Places that a change at these reaches, rising. */
function reached({ stars }: Plan, from: readonly number[], seen: Uint8Array): Int32Array {
  const found: number[] = [];
  for (const first of from) {
    let place = first;
    while (place >= 0 && seen[place] === 0) {
      seen[place] = 1;
      found.push(place);
      place = parentOf(stars, place);
    }
  }
  for (const place of found) seen[place] = 0;
  return Int32Array.from(found).sort();
}

/** The first of a star to go; -1 where there is none. */
export const parentOf = ({ starts, all }: Lists, place: number): number => {
  const start = starts[place] as number;
  return start < (starts[place + 1] as number) ? (all[start] as number) : -1;
};

/** What one node's star has: its own branches, and what the stars that went before left between. */
function fillStar(
  { plan, siemens, sums }: Mesh,
  place: number,
  ofBranch: Float64Array,
  sum: Float64Array,
): void {
  const { branches, givers, late, owner } = plan;
  const { starts, all } = plan.stars;
  const lastBranch = branches.starts[place + 1] as number;
  for (let i = branches.starts[place] as number; i < lastBranch; i++) {
    const branch = branches.all[i] as number;
    const far = late[branch] as number;
    sum[far] = (sum[far] as number) + (ofBranch[branch] as number);
  }
  const lastGiver = givers.starts[place + 1] as number;
  for (let i = givers.starts[place] as number; i < lastGiver; i++) {
    const own = givers.all[i] as number;
    const given = siemens[own] as number;
    if (given === 0) continue;
    const giver = owner[own] as number;
    const share = given / (sums[giver] as number);
    const last = starts[giver + 1] as number;
    for (let j = own + 1; j < last; j++) {
      const far = all[j] as number;
      sum[far] = (sum[far] as number) + share * (siemens[j] as number);
    }
  }
  const last = starts[place + 1] as number;
  let total = 0;
  for (let i = starts[place] as number; i < last; i++) {
    const far = all[i] as number;
    const value = sum[far] as number;
    sum[far] = 0;
    siemens[i] = value;
    total += value;
  }
  sums[place] = total;
}

/** Volts of each node against its piece's reference, for amps pushed into each node. */
export function voltsOf(mesh: Mesh, injected: Float64Array): Float64Array {
  const { nodeAt } = mesh.plan;
  const amps = new Float64Array(injected.length);
  for (let place = 0; place < amps.length; place++)
    amps[place] = injected[nodeAt[place] as number] as number;
  const volts = new Float64Array(injected.length);
  solveInto(mesh, amps, volts);
  return volts;
}

/** `amps` by place, used up; `volts` by node, overwritten. */
export function solveInto(
  { plan, siemens, sums }: Mesh,
  amps: Float64Array,
  volts: Float64Array,
): void {
  const count = sums.length;
  const { nodeAt } = plan;
  const { starts, all } = plan.stars;
  for (let place = 0; place < count; place++) {
    const own = amps[place] as number;
    if (own === 0) continue;
    const total = sums[place] as number;
    if (total === 0) continue;
    const share = own / total;
    const last = starts[place + 1] as number;
    for (let i = starts[place] as number; i < last; i++) {
      const far = all[i] as number;
      amps[far] = (amps[far] as number) + share * (siemens[i] as number);
    }
  }
  // from here on `amps` holds the volts of the places that are done
  for (let place = count - 1; place >= 0; place--) {
    const total = sums[place] as number;
    let sum = amps[place] as number;
    const last = starts[place + 1] as number;
    for (let i = starts[place] as number; i < last; i++)
      sum += (siemens[i] as number) * (amps[all[i] as number] as number);
    const own = total === 0 ? 0 : sum / total;
    amps[place] = own;
    volts[nodeAt[place] as number] = own;
  }
}

/** The connected piece that each node belongs to, by number, and the node that each counts from. */
export function piecesOf({ plan, siemens, sums }: Mesh): {
  piece: Int32Array;
  references: readonly number[];
} {
  const count = sums.length;
  const { starts, all } = plan.stars;
  const piece = new Int32Array(count);
  const references: number[] = [];
  for (let place = count - 1; place >= 0; place--) {
    const node = plan.nodeAt[place] as number;
    if (sums[place] === 0) {
      piece[node] = references.length;
      references.push(node);
      continue;
    }
    let i = starts[place] as number;
    while (siemens[i] === 0) i++;
    piece[node] = piece[plan.nodeAt[all[i] as number] as number] as number;
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
