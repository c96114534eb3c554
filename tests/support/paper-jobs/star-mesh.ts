/**
 * Volts of a resistive network by the star-mesh transform: nodes are taken out one after the other,
 * each star replaced by the mesh that looks the same from outside, then put back in reverse. Nothing
 * is ever subtracted, so it stays exact from a strand's milliohms to a meter's megohms.
 */

export interface Branch {
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  /** Volts that the branch lifts `a` over `b`; 0 for a plain resistor. */
  readonly volts: number;
}

/** Keeps what hangs on nothing from having no volts at all: far beyond any insulation, S. */
const LEAK = 1e-13;

/** Plain resistors as sums of siemens between any two nodes, from which nodes can be taken out. */
class Mesh {
  readonly arms: Map<number, number>[];

  constructor(count: number, branches: readonly Branch[]) {
    this.arms = Array.from({ length: count }, () => new Map());
    for (const { a, b, ohms } of branches) if (a !== b) this.join(a, b, 1 / ohms);
  }

  join(a: number, b: number, siemens: number): void {
    const [one, other] = [this.arms[a], this.arms[b]];
    one?.set(b, (one.get(b) ?? 0) + siemens);
    other?.set(a, (other.get(a) ?? 0) + siemens);
  }

  /** Takes a node out and joins its neighbours with one another instead. */
  takeOut(node: number): void {
    const arms = [...(this.arms[node] as Map<number, number>)];
    const sum = arms.reduce((total, [, siemens]) => total + siemens, 0);
    for (const [far] of arms) this.arms[far]?.delete(node);
    for (let one = 0; one < arms.length; one++) {
      const [far, siemens] = arms[one] as [number, number];
      for (let two = one + 1; two < arms.length; two++) {
        const [other, more] = arms[two] as [number, number];
        this.join(far, other, (siemens * more) / sum);
      }
    }
  }

  /** Takes out all of these that have at most so many neighbours, those with fewest first. */
  thinOut(nodes: Set<number>, mostArms: number): void {
    for (let degree = 2; degree <= mostArms && nodes.size > 0; degree++) {
      for (let again = true; again; ) {
        again = false;
        for (const node of nodes) {
          if ((this.arms[node]?.size ?? 0) > degree) continue;
          nodes.delete(node);
          this.takeOut(node);
          again = true;
        }
      }
    }
  }
}

/** One node taken out: its neighbours, where its siemens to them stand, and where theirs to each other do. */
interface Step {
  readonly node: number;
  readonly fars: readonly number[];
  readonly arms: readonly number[];
  readonly meshes: readonly number[];
}

/**
 * A network whose branches keep their ends while what they let through changes: which node goes
 * when, and where each sum of siemens stands, is worked out once for all its states.
 */
export class MeshPlan {
  private readonly count: number;
  private readonly ends: readonly Pick<Branch, "a" | "b">[];
  /** Where the siemens of each branch are summed up; -1 for one that leads back to its own node. */
  private readonly places: readonly number[];
  private readonly leaks: readonly number[];
  private readonly steps: readonly Step[];
  private readonly sums: number;

  constructor(count: number, ends: readonly Pick<Branch, "a" | "b">[]) {
    this.count = count;
    this.ends = ends;
    const near = Array.from({ length: count }, () => new Map<number, number>());
    let sums = 0;
    const place = (a: number, b: number): number => {
      const known = near[a]?.get(b);
      if (known !== undefined) return known;
      near[a]?.set(b, sums);
      near[b]?.set(a, sums);
      return sums++;
    };
    this.places = ends.map(({ a, b }) => (a === b ? -1 : place(a, b)));
    const nodes = new Set(Array.from({ length: count - 1 }, (_, index) => index + 1));
    this.leaks = [...nodes].map((node) => place(node, 0));
    const steps: Step[] = [];
    for (let degree = 2; nodes.size > 0; degree++) {
      for (let again = true; again; ) {
        again = false;
        for (const node of nodes) {
          const own = near[node] as Map<number, number>;
          if (own.size > degree) continue;
          nodes.delete(node);
          const fars = [...own.keys()];
          for (const far of fars) near[far]?.delete(node);
          const meshes = fars.flatMap((far, at) =>
            fars.slice(at + 1).map((other) => place(far, other)),
          );
          steps.push({ node, fars, arms: [...own.values()], meshes });
          again = true;
        }
      }
    }
    this.steps = steps;
    this.sums = sums;
  }

  /** Volts of each node against node 0, by the siemens of each branch and the volts it lifts. */
  volts(siemens: readonly number[], lifts: readonly number[]): Float64Array {
    const sums = new Float64Array(this.sums);
    const amps = new Float64Array(this.count);
    for (const leak of this.leaks) sums[leak] = LEAK;
    this.places.forEach((place, index) => {
      if (place < 0) return;
      const through = siemens[index] as number;
      sums[place] = (sums[place] as number) + through;
      const { a, b } = this.ends[index] as Branch;
      const pushed = through * (lifts[index] as number);
      amps[a] = (amps[a] as number) + pushed;
      amps[b] = (amps[b] as number) - pushed;
    });
    const total = (places: readonly number[]) =>
      places.reduce((sum, place) => sum + (sums[place] as number), 0);
    const whole = this.steps.map(({ node, fars, arms, meshes }) => {
      const sum = total(arms);
      let mesh = 0;
      for (let one = 0; one < arms.length; one++) {
        const share = (sums[arms[one] as number] as number) / sum;
        const far = fars[one] as number;
        amps[far] = (amps[far] as number) + (amps[node] as number) * share;
        for (let two = one + 1; two < arms.length; two++) {
          const at = meshes[mesh++] as number;
          sums[at] = (sums[at] as number) + share * (sums[arms[two] as number] as number);
        }
      }
      return sum;
    });
    const volts = new Float64Array(this.count);
    for (let at = this.steps.length - 1; at >= 0; at--) {
      const { node, fars, arms } = this.steps[at] as Step;
      let pulled = amps[node] as number;
      for (let one = 0; one < arms.length; one++)
        pulled += (sums[arms[one] as number] as number) * (volts[fars[one] as number] as number);
      volts[node] = pulled / (whole[at] as number);
    }
    return volts;
  }
}

/** Volts of each node against node 0. */
export const meshVolts = (count: number, branches: readonly Branch[]): Float64Array =>
  new MeshPlan(count, branches).volts(
    branches.map(({ ohms }) => 1 / ohms),
    branches.map(({ volts }) => volts),
  );

/** A smaller network that looks the same from the nodes of interest. */
export interface Lumped {
  readonly count: number;
  readonly branches: readonly Branch[];
  /** The number there of a node that was kept. */
  at(node: number): number;
}

/** Nodes with more neighbours than this stay: taking them out would leave more than it takes. */
const HUB = 3;

/** Lumps plain resistors together between the nodes to keep and those that a source is tied to. */
export function lumped(
  count: number,
  branches: readonly Branch[],
  keep: ReadonlySet<number>,
): Lumped {
  const sources = branches.filter(({ volts }) => volts !== 0);
  const kept = new Set([0, ...keep, ...sources.flatMap(({ a, b }) => [a, b])]);
  const mesh = new Mesh(
    count,
    branches.filter(({ volts }) => volts === 0),
  );
  const others = new Set<number>();
  for (let node = 0; node < count; node++) if (!kept.has(node)) others.add(node);
  mesh.thinOut(others, HUB);
  const numbers = new Map([...kept, ...others].map((node, index) => [node, index]));
  const at = (node: number): number => {
    const number = numbers.get(node);
    if (number === undefined) throw new Error(`node ${node} was lumped away`);
    return number;
  };
  const joined: Branch[] = [];
  for (const [node, number] of numbers)
    for (const [far, siemens] of mesh.arms[node] ?? [])
      if (node < far) joined.push({ a: number, b: at(far), ohms: 1 / siemens, volts: 0 });
  for (const { a, b, ...rest } of sources) joined.push({ a: at(a), b: at(b), ...rest });
  return { count: numbers.size, branches: joined, at };
}
