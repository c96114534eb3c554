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

interface Star {
  readonly node: number;
  readonly arms: readonly (readonly [far: number, siemens: number])[];
  readonly sum: number;
}

/** The network as sums of siemens between any two nodes, from which nodes can be taken out. */
class Mesh {
  readonly arms: Map<number, number>[];
  readonly amps: Float64Array;

  constructor(count: number, branches: readonly Branch[]) {
    this.arms = Array.from({ length: count }, () => new Map());
    this.amps = new Float64Array(count);
    for (const { a, b, ohms, volts } of branches) {
      if (a === b) continue;
      this.join(a, b, 1 / ohms);
      this.amps[a] = (this.amps[a] as number) + volts / ohms;
      this.amps[b] = (this.amps[b] as number) - volts / ohms;
    }
  }

  join(a: number, b: number, siemens: number): void {
    const [one, other] = [this.arms[a], this.arms[b]];
    one?.set(b, (one.get(b) ?? 0) + siemens);
    other?.set(a, (other.get(a) ?? 0) + siemens);
  }

  /** Takes a node out and joins its neighbours with one another instead. */
  takeOut(node: number): Star {
    const arms = [...(this.arms[node] as Map<number, number>)];
    const sum = arms.reduce((total, [, siemens]) => total + siemens, 0);
    for (const [far, siemens] of arms) {
      this.arms[far]?.delete(node);
      this.amps[far] = (this.amps[far] as number) + ((this.amps[node] as number) * siemens) / sum;
    }
    for (let one = 0; one < arms.length; one++) {
      const [far, siemens] = arms[one] as [number, number];
      for (let two = one + 1; two < arms.length; two++) {
        const [other, more] = arms[two] as [number, number];
        this.join(far, other, (siemens * more) / sum);
      }
    }
    return { node, arms, sum };
  }

  /** Takes out all of these that have at most so many neighbours, those with fewest first. */
  thinOut(nodes: Set<number>, mostArms: number): readonly Star[] {
    const gone: Star[] = [];
    for (let degree = 2; degree <= mostArms && nodes.size > 0; degree++) {
      for (let again = true; again; ) {
        again = false;
        for (const node of nodes) {
          if ((this.arms[node]?.size ?? 0) > degree) continue;
          nodes.delete(node);
          gone.push(this.takeOut(node));
          again = true;
        }
      }
    }
    return gone;
  }
}

/** Volts of each node against node 0. */
export function meshVolts(count: number, branches: readonly Branch[]): Float64Array {
  const mesh = new Mesh(count, branches);
  const nodes = new Set<number>();
  for (let node = 1; node < count; node++) {
    mesh.join(node, 0, LEAK);
    nodes.add(node);
  }
  const volts = new Float64Array(count);
  for (const { node, arms, sum } of mesh.thinOut(nodes, count).toReversed()) {
    const pulled = arms.reduce((total, [far, g]) => total + g * (volts[far] as number), 0);
    volts[node] = ((mesh.amps[node] as number) + pulled) / sum;
  }
  return volts;
}

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
