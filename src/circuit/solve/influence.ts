import type { Groups } from "../../base/index.ts";
import type { Unknown } from "./branch.ts";
import type { OperatingPoint } from "./operating-point.ts";
import { type Ripple, Ripples } from "./ripple.ts";
import { piecesOf } from "./star-mesh.ts";
import { withJunctions } from "./transfer.ts";
import { type Group, groupByFarPieces, piecesTogether } from "./unknown-groups.ts";

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

const NOTHING_FELT: { groups: ReadonlySet<Group>; joints: ReadonlySet<Unknown> } = {
  groups: new Set(),
  joints: new Set(),
};

/** An open contact whose closing may move something, and who feels it. */
interface Joint {
  readonly unknown: Unknown;
  /** Ω of transfer from which closing it moves `NO_VOLTS`. */
  readonly enough: number;
  /** Ω of transfer down to which its ripple was followed. */
  readonly followed: number;
}

/** Volts of some nodes for the amps in question. */
type Exactly = (nodes: readonly number[]) => readonly number[];

/** For many questions about one state: what is common to them is worked out once. */
class Influence {
  /** Number of the piece that each node belongs to, tied by junctions too whether they block or not. */
  readonly piece: Int32Array;
  readonly #volts: Float64Array;
  readonly #references: readonly number[];
  readonly #unknowns: readonly Unknown[];
  readonly #ripples: Ripples;
  readonly #groups = new Map<string, readonly Group[]>();
  readonly #inPiece = new Map<number, ByNode<Group>>();
  #joints: ByNode<Joint> | null = null;
  #together: Groups | null = null;

  constructor(point: OperatingPoint, unknowns: readonly Unknown[]) {
    const mesh = withJunctions(point);
    const { piece, references } = piecesOf(mesh);
    this.piece = piece;
    this.#references = references;
    this.#volts = point.volts;
    this.#unknowns = unknowns;
    this.#ripples = new Ripples(mesh);
  }

  /** The node that a piece's volts are counted from here. */
  referenceOf(piece: number): number {
    return this.#references[piece] as number;
  }

  /** Whether an unknown could change what lies between two nodes. */
  depends(red: number, black: number): boolean {
    const own = this.piece[red] as number;
    const other = this.piece[black] as number;
    if (own !== other) return this.mayTie(own, other);
    const { groups, joints } = this.#feltBetween(red, black);
    return groups.size + joints.size > 0;
  }

  /** Whether unknowns could tie two pieces to one another. */
  mayTie(piece: number, other: number): boolean {
    this.#together ??= piecesTogether(this.piece, this.#unknowns);
    return this.#together.of(piece) === this.#together.of(other);
  }

  /** The unknowns that could change what lies between two nodes. */
  between(red: number, black: number): readonly Unknown[] {
    const own = this.piece[red] as number;
    const other = this.piece[black] as number;
    if (this.#unknowns.length === 0) return [];
    if (own !== other) {
      if (!this.mayTie(own, other)) return [];
      const touches = (group: Group, piece: number) =>
        group.some(({ nodes }) => nodes.some((node) => this.piece[node] === piece));
      return this.#groupsOf(own, other).flatMap((group) =>
        touches(group, own) && touches(group, other) ? group : [],
      );
    }
    const { groups, joints } = this.#feltBetween(red, black);
    if (groups.size + joints.size === 0) return [];
    return [...new Set([...[...groups].flat(), ...joints])];
  }

  /** Groups and open contacts that could change what lies between two nodes of one piece. */
  #feltBetween(red: number, black: number) {
    if (this.#unknowns.length === 0 || red === black) return NOTHING_FELT;
    const own = this.piece[red] as number;
    const seen = this.#ripples.from(
      [
        [red, 1],
        [black, -1],
      ],
      FOLLOWED,
    );
    const { felt, doubtful } = this.#groupsFelt(own, seen);
    const exactly = (nodes: readonly number[]) =>
      this.#ripples.at(
        [
          [red, 1],
          [black, -1],
        ],
        nodes,
      );
    for (const group of doubtful) if (this.#feels(group, own, exactly)) felt.add(group);
    return { groups: felt, joints: this.#jointsFelt(red, black, exactly) };
  }

  /**
   * The nodes of a piece whose volts against its reference an unknown could change, and the
   * unknowns that change any. By reciprocity a push at an unknown's pin is felt there as a push
   * there would be felt at the pin, so that the pins are gone through and not the nodes.
   */
  unsure(piece: number): { nodes: ReadonlySet<number>; unknowns: ReadonlySet<Unknown> } {
    const reference = this.referenceOf(piece);
    const groups = this.#groupsIn(piece);
    const near = new Map<number, Map<Group, Met>>();
    for (const [pin, own] of groups.entries()) {
      const felt = this.#ripples.from([[pin, 1]], FOLLOWED);
      felt.nodes.forEach((node, index) => {
        if (Math.abs(felt.volts[index] as number) < FOLLOWED) return;
        const met = near.get(node) ?? new Map<Group, Met>();
        near.set(node, met);
        for (const group of own) meet(met, group, felt.volts[index] as number);
      });
    }
    const joints = this.#jointsByNode();
    const nodes = new Set<number>();
    const unknowns = new Set<Unknown>();
    const mark = (node: number, found: readonly Unknown[]) => {
      if (found.length === 0) return;
      nodes.add(node);
      for (const unknown of found) unknowns.add(unknown);
    };
    // both ends of a range are known as far as the ripples were followed
    const margin = 2 * FOLLOWED;
    for (const node of new Set([...near.keys(), ...joints.nodes()])) {
      if (this.piece[node] !== piece || node === reference) continue;
      let doubtful = false;
      for (const [group, met] of near.get(node) ?? []) {
        const range = rangeOf(met, groups.sizeOf(group));
        if (range >= NO_INFLUENCE + margin) mark(node, group);
        else if (range >= NO_INFLUENCE - margin) doubtful = true;
      }
      joints.at(node).forEach((joint, index) => {
        const moved = Math.abs(joints.voltsAt(node, index));
        if (moved >= joint.enough + joint.followed) mark(node, [joint.unknown]);
        else if (moved >= joint.enough - joint.followed) doubtful = true;
      });
      if (doubtful && !nodes.has(node)) mark(node, this.between(node, reference));
    }
    return { nodes, unknowns };
  }

  /** Groups whose pins surely feel the ripple, and those for which it was not followed far enough. */
  #groupsFelt(piece: number, seen: Ripple): { felt: Set<Group>; doubtful: readonly Group[] } {
    const met = new Map<Group, Met>();
    const groups = this.#groupsIn(piece);
    seen.nodes.forEach((node, index) => {
      const volts = seen.volts[index] as number;
      // as good as not met, and every module hangs on the node that volts are counted from
      if (volts === 0) return;
      for (const group of groups.at(node)) meet(met, group, volts);
    });
    const felt = new Set<Group>();
    const doubtful: Group[] = [];
    for (const [group, found] of met) {
      const range = rangeOf(found, groups.sizeOf(group));
      if (range >= NO_INFLUENCE + 2 * FOLLOWED) felt.add(group);
      else if (range >= NO_INFLUENCE - 2 * FOLLOWED) doubtful.push(group);
    }
    return { felt, doubtful };
  }

  /** Whether a group's pins in one piece see enough of a difference. */
  #feels(group: Group, piece: number, exactly: Exactly): boolean {
    const pins = group.flatMap(({ nodes }) => nodes.filter((node) => this.piece[node] === piece));
    const volts = exactly(pins);
    return Math.max(...volts) - Math.min(...volts) >= NO_INFLUENCE;
  }

  /** Open contacts whose closing moves what lies between two nodes of one piece. */
  #jointsFelt(red: number, black: number, exactly: Exactly): ReadonlySet<Unknown> {
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
      let found = Math.abs(ohms);
      if (found < enough - 2 * joint.followed) continue;
      if (found < enough + 2 * joint.followed) {
        const [a, b] = exactly(unknown.nodes) as [number, number];
        found = Math.abs(a - b);
      }
      if (found >= enough) felt.add(unknown);
    }
    return felt;
  }

  #groupsOf(piece: number, other: number): readonly Group[] {
    const key = piece < other ? `${piece} ${other}` : `${other} ${piece}`;
    const known = this.#groups.get(key);
    if (known) return known;
    const groups = groupByFarPieces(this.#unknowns, this.piece, piece, other);
    this.#groups.set(key, groups);
    return groups;
  }

  #groupsIn(piece: number): ByNode<Group> {
    const known = this.#inPiece.get(piece);
    if (known) return known;
    const found = new ByNode<Group>();
    for (const group of this.#groupsOf(piece, piece)) {
      for (const { nodes } of group) {
        for (const node of nodes) if (this.piece[node] === piece) found.addOnce(node, group);
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
      if (this.piece[a] !== this.piece[b]) continue;
      const across = Math.abs((this.#volts[a] as number) - (this.#volts[b] as number));
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
      const enough = Math.max(FELT, (NO_VOLTS * ohms) / across);
      const joint: Joint = { unknown, enough, followed: enough / 2.5 };
      const far = this.#ripples.from(
        [
          [a, 1],
          [b, -1],
        ],
        joint.followed,
      );
      far.nodes.forEach((node, index) => {
        const volts = far.volts[index] as number;
        if (Math.abs(volts) >= joint.followed) found.add(node, joint, volts);
      });
    }
    this.#joints = found;
    return found;
  }
}

/** At how many of a group's pins something was met, and the extremes of what it was. */
interface Met {
  readonly count: number;
  readonly least: number;
  readonly most: number;
}

function meet(met: Map<Group, Met>, group: Group, volts: number): void {
  const own = met.get(group);
  met.set(group, {
    count: (own?.count ?? 0) + 1,
    least: Math.min(own?.least ?? volts, volts),
    most: Math.max(own?.most ?? volts, volts),
  });
}

/** `pins` that the group has: what was not met is as good as 0. */
const rangeOf = ({ count, least, most }: Met, pins: number): number =>
  count === pins ? most - least : Math.max(0, most) - Math.min(0, least);

/** Things by the nodes that they lie at, each with the volts that it sees there. */
class ByNode<Thing> {
  readonly #things = new Map<number, Thing[]>();
  readonly #volts = new Map<number, number[]>();
  readonly #sizes = new Map<Thing, number>();

  nodes(): Iterable<number> {
    return this.#things.keys();
  }

  entries(): Iterable<readonly [node: number, things: readonly Thing[]]> {
    return this.#things;
  }

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
