import type { Unknown } from "./branch.ts";
import type { OperatingPoint } from "./operating-point.ts";
import { type Ripple, Ripples } from "./ripple.ts";

/**
 * What a quantity depends on that nobody knows. Pushing one ampere in at red and out at black
 * gives, by reciprocity, the volts that an ampere anywhere else would add between red and black:
 * where an unknown part sees a difference between its own pins, it can move the reading.
 */

/** Ω of transfer below which an unknown part's amps move nothing that matters. */
const NO_INFLUENCE = 0.5;
/** A contact's own doing is known better: the volts by which closing it may move a reading. */
const NO_VOLTS = 0.4;
/** Ω of transfer below which that is not even looked at. */
const FELT = 1e-3;
/** Ω of transfer down to which ripples are followed: what they leave out moves a range by twice that at most. */
const FOLLOWED = 0.1;

/** Volts at every node per ampere pushed from black to red; null where they do not hang together. */
export function transfer(point: OperatingPoint, red: number, black: number): Float64Array | null {
  if (point.factored.piece[red] !== point.factored.piece[black]) return null;
  const injected = new Float64Array(point.volts.length);
  injected[red] = (injected[red] as number) + 1;
  injected[black] = (injected[black] as number) - 1;
  return point.factored.solve(injected);
}

/** The unknowns that could change what lies between two nodes. */
export const influences = (
  point: OperatingPoint,
  unknowns: readonly Unknown[],
  red: number,
  black: number,
): readonly Unknown[] => influenceOf(point, unknowns).between(red, black);

const kept = new WeakMap<OperatingPoint, WeakMap<readonly Unknown[], Influence>>();

/** The same for the same point and list: what one question works out serves the next. */
export function influenceOf(point: OperatingPoint, unknowns: readonly Unknown[]): Influence {
  const ofPoint = kept.get(point) ?? new WeakMap<readonly Unknown[], Influence>();
  kept.set(point, ofPoint);
  const influence = ofPoint.get(unknowns) ?? new Influence(point, unknowns);
  ofPoint.set(unknowns, influence);
  return influence;
}

type Group = readonly Unknown[];

/** An open contact whose closing may move something, and who feels it. */
interface Joint {
  readonly unknown: Unknown;
  /** Ω between its two nodes without it. */
  readonly ohms: number;
  /** Ω of transfer from which closing it moves `NO_VOLTS`. */
  readonly enough: number;
}

/** For many questions about one state: what is common to them is worked out once. */
class Influence {
  readonly #point: OperatingPoint;
  readonly #piece: Int32Array;
  readonly #unknowns: readonly Unknown[];
  readonly #ripples: Ripples;
  readonly #groups = new Map<string, readonly Group[]>();
  readonly #inPiece = new Map<number, ByNode<Group>>();
  #joints: ByNode<Joint> | null = null;

  constructor(point: OperatingPoint, unknowns: readonly Unknown[]) {
    this.#point = point;
    this.#piece = point.factored.piece;
    this.#unknowns = unknowns;
    this.#ripples = new Ripples(point.mesh);
  }

  /** The unknowns that could change what lies between two nodes. */
  between(red: number, black: number): readonly Unknown[] {
    const own = this.#piece[red] as number;
    const other = this.#piece[black] as number;
    if (this.#unknowns.length === 0) return [];
    if (own !== other) {
      const touches = (group: Group, piece: number) =>
        group.some(({ nodes }) => nodes.some((node) => this.#piece[node] === piece));
      return this.#groupsOf(own, other).flatMap((group) =>
        touches(group, own) && touches(group, other) ? group : [],
      );
    }
    if (red === black) return [];
    const seen = this.#ripples.from(
      [
        [red, 1],
        [black, -1],
      ],
      FOLLOWED,
    );
    const { felt, doubtful } = this.#groupsFelt(own, seen);
    let exact: Float64Array | null = null;
    const seenBy = () => {
      exact ??= transfer(this.#point, red, black) as Float64Array;
      return exact;
    };
    for (const group of doubtful) {
      if (this.#range(group, own, seenBy()) >= NO_INFLUENCE) felt.add(group);
    }
    const joints = this.#jointsFelt(red, black, seenBy);
    if (felt.size + joints.size === 0) return [];
    return this.#groupsOf(own, own).flatMap((group) =>
      felt.has(group) ? group : group.filter((unknown) => joints.has(unknown)),
    );
  }

  /** Groups whose pins surely feel the ripple, and those for which it was not followed far enough. */
  #groupsFelt(piece: number, seen: Ripple): { felt: Set<Group>; doubtful: readonly Group[] } {
    const met = new Map<Group, { count: number; least: number; most: number }>();
    const groups = this.#groupsIn(piece);
    seen.nodes.forEach((node, index) => {
      const volts = seen.volts[index] as number;
      for (const group of groups.at(node)) {
        const own = met.get(group) ?? { count: 0, least: volts, most: volts };
        own.count++;
        own.least = Math.min(own.least, volts);
        own.most = Math.max(own.most, volts);
        met.set(group, own);
      }
    });
    const felt = new Set<Group>();
    const doubtful: Group[] = [];
    for (const [group, { count, least, most }] of met) {
      const whole = count === groups.sizeOf(group);
      const range = whole ? most - least : Math.max(0, most) - Math.min(0, least);
      if (range >= NO_INFLUENCE + 2 * FOLLOWED) felt.add(group);
      else if (range >= NO_INFLUENCE - 2 * FOLLOWED) doubtful.push(group);
    }
    return { felt, doubtful };
  }

  /** Ω between the most and the least that a group's nodes in one piece feel. */
  #range(group: Group, piece: number, seen: Float64Array): number {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (const { nodes } of group) {
      for (const node of nodes) {
        if (this.#piece[node] !== piece) continue;
        const felt = seen[node] as number;
        if (felt < least) least = felt;
        if (felt > most) most = felt;
      }
    }
    return most - least;
  }

  /** Open contacts whose closing moves what lies between two nodes of one piece. */
  #jointsFelt(red: number, black: number, exact: () => Float64Array): ReadonlySet<Unknown> {
    const joints = this.#jointsByNode();
    const moved = new Map<Joint, number>();
    for (const [node, sign] of [
      [red, 1],
      [black, -1],
    ] as const) {
      joints.at(node).forEach((joint, index) => {
        const volts = joints.voltsAt(node, index);
        moved.set(joint, (moved.get(joint) ?? 0) + sign * volts);
      });
    }
    const felt = new Set<Unknown>();
    for (const [joint, ohms] of moved) {
      const { enough, unknown } = joint;
      const [a, b] = unknown.nodes as readonly [number, number];
      let found = Math.abs(ohms);
      if (found < 0.4 * enough) continue;
      if (found < 1.6 * enough) found = Math.abs((exact()[a] as number) - (exact()[b] as number));
      if (found >= enough) felt.add(unknown);
    }
    return felt;
  }

  #groupsOf(piece: number, other: number): readonly Group[] {
    const key = piece < other ? `${piece} ${other}` : `${other} ${piece}`;
    const known = this.#groups.get(key);
    if (known) return known;
    const groups = groupByFarPieces(this.#unknowns, this.#piece, piece, other);
    this.#groups.set(key, groups);
    return groups;
  }

  #groupsIn(piece: number): ByNode<Group> {
    const known = this.#inPiece.get(piece);
    if (known) return known;
    const found = new ByNode<Group>();
    for (const group of this.#groupsOf(piece, piece)) {
      for (const { nodes } of group) {
        for (const node of nodes) if (this.#piece[node] === piece) found.addOnce(node, group);
      }
    }
    this.#inPiece.set(piece, found);
    return found;
  }

  #jointsByNode(): ByNode<Joint> {
    if (this.#joints) return this.#joints;
    const found = new ByNode<Joint>();
    for (const unknown of this.#unknowns) {
      const [a, b] = unknown.nodes;
      if (!unknown.joint || a === undefined || b === undefined || a === b) continue;
      if (this.#piece[a] !== this.#piece[b]) continue;
      const { volts } = this.#point;
      const across = Math.abs((volts[a] as number) - (volts[b] as number));
      if (across < NO_VOLTS) continue;
      const near = this.#ripples.from(
        [
          [a, 1],
          [b, -1],
        ],
        Number.POSITIVE_INFINITY,
      );
      const at = (node: number) => near.volts[near.nodes.indexOf(node)] as number;
      const ohms = at(a) - at(b);
      const joint: Joint = { unknown, ohms, enough: Math.max(FELT, (NO_VOLTS * ohms) / across) };
      const far = this.#ripples.from(
        [
          [a, 1],
          [b, -1],
        ],
        joint.enough / 4,
      );
      far.nodes.forEach((node, index) => {
        found.add(node, joint, far.volts[index] as number);
      });
    }
    this.#joints = found;
    return found;
  }
}

/** Things by the nodes that they lie at, each with the volts that it sees there. */
class ByNode<Thing> {
  readonly #things = new Map<number, Thing[]>();
  readonly #volts = new Map<number, number[]>();
  readonly #sizes = new Map<Thing, number>();

  at(node: number): readonly Thing[] {
    return this.#things.get(node) ?? NONE;
  }

  voltsAt(node: number, index: number): number {
    return this.#volts.get(node)?.[index] ?? 0;
  }

  /** Number of nodes that it lies at. */
  sizeOf(thing: Thing): number {
    return this.#sizes.get(thing) ?? 0;
  }

  addOnce(node: number, thing: Thing): void {
    if (!this.at(node).includes(thing)) this.add(node, thing, 0);
  }

  add(node: number, thing: Thing, volts: number): void {
    const things = this.#things.get(node);
    if (things) things.push(thing);
    else this.#things.set(node, [thing]);
    const own = this.#volts.get(node);
    if (own) own.push(volts);
    else this.#volts.set(node, [volts]);
    this.#sizes.set(thing, this.sizeOf(thing) + 1);
  }
}

const NONE: readonly never[] = [];

/** Unknowns that meet in a piece of circuit of their own act together. */
function groupByFarPieces(
  unknowns: readonly Unknown[],
  piece: Int32Array,
  redPiece: number,
  blackPiece: number,
): readonly Group[] {
  const parent = unknowns.map((_, index) => index);
  const root = (index: number): number => {
    let up = index;
    while (parent[up] !== up) up = parent[up] as number;
    return up;
  };
  const firstIn = new Map<number, number>();
  unknowns.forEach((unknown, index) => {
    for (const node of unknown.nodes) {
      const own = piece[node] as number;
      if (own === redPiece || own === blackPiece) continue;
      const first = firstIn.get(own);
      if (first === undefined) firstIn.set(own, index);
      else parent[root(index)] = root(first);
    }
  });
  const groups = new Map<number, Unknown[]>();
  unknowns.forEach((unknown, index) => {
    const key = root(index);
    const group = groups.get(key);
    if (group) group.push(unknown);
    else groups.set(key, [unknown]);
  });
  return [...groups.values()];
}
