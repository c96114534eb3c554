import type { Plan } from "./elimination-plan.ts";
import { changedMesh, type Mesh, meshOf, type Workspace } from "./star-mesh.ts";

/** As many as a band begins from by turns: lowest and highest, loud and quiet. */
const MOST = 4;
/** Share of the branches up to which changing a mesh is quicker than making one. */
const FEW = 0.1;

interface Begun {
  readonly siemens: Float64Array;
  readonly mesh: Mesh;
}

/**
 * Meshes that solutions began from, of one plan. Most of what is asked of a machine differs from
 * what was asked before in few branches: a mesh then comes out of the nearest one that is kept, bit
 * for bit as if it were made afresh.
 */
export class BegunMeshes {
  readonly #plan: Plan;
  readonly #work: Workspace;
  /** The latest used last. */
  #kept: readonly Begun[] = [];

  constructor(plan: Plan, work: Workspace) {
    this.#plan = plan;
    this.#work = work;
  }

  /** `siemens`: of the plan's branches, and maybe of more. Not to be changed; good until the next call. */
  of(siemens: Float64Array): Mesh {
    const count = this.#plan.early.length;
    let nearest: Begun | null = null;
    let least = Math.floor(FEW * count) + 1;
    for (const begun of this.#kept) {
      const differ = differing(begun.siemens, siemens, least);
      if (differ >= least) continue;
      nearest = begun;
      least = differ;
    }
    const others = this.#kept.filter((begun) => begun !== nearest);
    const found = nearest
      ? this.#changed(nearest, siemens)
      : { siemens: siemens.slice(0, count), mesh: meshOf(this.#plan, siemens) };
    this.#kept = [...others.slice(-(MOST - 1)), found];
    return found.mesh;
  }

  #changed(begun: Begun, siemens: Float64Array): Begun {
    const changed: number[] = [];
    for (let index = 0; index < begun.siemens.length; index++) {
      if (begun.siemens[index] === siemens[index]) continue;
      begun.siemens[index] = siemens[index] as number;
      changed.push(index);
    }
    changedMesh(begun.mesh, this.#plan, begun.siemens, changed, this.#work, true);
    return begun;
  }
}

/** How many of the first differ, counted up to `most`. */
function differing(first: Float64Array, second: Float64Array, most: number): number {
  let count = 0;
  for (let index = 0; index < first.length && count < most; index++)
    if (first[index] !== second[index]) count++;
  return count;
}
