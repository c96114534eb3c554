import type { OperatingPoint, Unknown, Wiring } from "../solve/index.ts";
import { Groups } from "./groups.ts";
import { feltOnIsland, findIslands, type Islands } from "./islands.ts";

/** Ω of transfer from which an unknown part's amps move something that matters. */
const FELT_OHMS = 0.5;
/** Points of an island up to which it is solved by itself. */
const SMALL_ISLAND = 60;
/** Pins on an island up to which each is followed by itself; more are followed all at once. */
const FEW_PINS = 64;

export type Group = readonly Unknown[];

/** What the unknowns of a machine may move within one piece of its circuit. */
export interface PieceReach {
  /** Groups that move anything against the reference. */
  readonly felt: ReadonlySet<Group>;
  /** Marks every node that they move, and those of which `alsoFelt` has been told. */
  mark(isUnknown: Uint8Array): void;
  /** Whether they may move one node of the piece against another. */
  between(a: number, b: number): boolean;
  /** What an ampere from one unknown's pin to another does; null where that was not followed. */
  push(from: number, to: number): Push | null;
  alsoFelt(node: number): void;
  /** The node that stands for all that are one point with it. */
  pointOf(node: number): number;
}

/** An ampere pushed in at one pin and out at another, both of which are an unknown's. */
export interface Push {
  /** Ω between the two. */
  readonly apart: number;
  /** Ω of transfer that is felt at most off their own islands. */
  readonly stray: number;
  /** Points, one node for each, on their islands. */
  readonly near: readonly number[];
  /** Ω of transfer against the reference, without what strays. */
  feltAt(node: number): number;
}

/** A group's pins on one island, each with what its push is felt at, by the points' places. */
interface Touch {
  readonly group: Group;
  readonly rows: readonly Float64Array[];
  /** It has further pins in the piece, which feel nothing of this island. */
  readonly beyond: boolean;
}

export function reachInPiece(
  wiring: Wiring,
  point: OperatingPoint,
  unknowns: readonly Unknown[],
  reference: number,
): PieceReach {
  const { piece } = point.factored;
  const islands = findIslands(wiring.nodeCount, wiring.branches, point, reference);
  const { pointOf, islandOf, placeOf, points } = islands;
  const own = piece[reference] as number;
  const pins = pinsByIsland(groupUnknowns(unknowns, piece, own), islands, piece, own);
  const rows = new Map<number, Float64Array>();
  const touches = new Map<number, readonly Touch[]>();
  for (const [island, groups] of pins.onIsland) {
    const own: Touch[] = [];
    const all = addRows(rows, point, islands, island, groups, reference);
    for (const [group, at] of groups) {
      own.push({
        group,
        rows: all ? [all] : at.map((pin) => rows.get(pin) as Float64Array),
        beyond: all !== null || pins.spread.has(group),
      });
    }
    touches.set(island, own);
  }
  const touchesAt = (node: number) => {
    const island = islandOf[pointOf[node] as number] as number;
    return island < 0 ? [] : (touches.get(island) ?? []);
  };
  const placeAt = (node: number) => placeOf[pointOf[node] as number] as number;
  const felt = new Set<Group>();
  const isFelt = new Uint8Array(wiring.nodeCount);
  for (const [island, own] of touches) {
    const members = points[island] as Int32Array;
    for (const touch of own) {
      for (let place = 0; place < members.length; place++) {
        if (rangeAt(touch, place) < FELT_OHMS) continue;
        isFelt[members[place] as number] = 1;
        felt.add(touch.group);
      }
    }
  }
  /** By a node: what it feels of a push at a pin; null where that was not followed. */
  const feltOf = (pin: number): ((node: number) => number) | null => {
    const island = islandOf[pointOf[pin] as number] as number;
    if (island < 0) return () => 0;
    const row = rows.get(pointOf[pin] as number);
    if (!row) return null;
    return (node) =>
      islandOf[pointOf[node] as number] === island ? (row[placeAt(node)] as number) : 0;
  };
  const strayOf = (pin: number): number => {
    const island = islandOf[pointOf[pin] as number] as number;
    return (
      island < 0 ? islands.heldOhms[pointOf[pin] as number] : islands.shore[island]
    ) as number;
  };
  const matesOf = (pin: number): readonly number[] => {
    const island = islandOf[pointOf[pin] as number] as number;
    return island < 0 ? [] : [...(points[island] as Int32Array)];
  };
  return {
    felt,
    pointOf: (node) => pointOf[node] as number,
    alsoFelt(node) {
      isFelt[pointOf[node] as number] = 1;
    },
    mark(isUnknown) {
      for (let node = 0; node < isUnknown.length; node++) {
        if (isFelt[pointOf[node] as number]) isUnknown[node] = 1;
      }
    },
    between(a, b) {
      const [here, there] = [touchesAt(a), touchesAt(b)];
      if (here === there) {
        return here.some((touch) => rangeAt(touch, placeAt(a), placeAt(b)) >= FELT_OHMS);
      }
      const apart = (touch: Touch, node: number) => rangeAt(touch, placeAt(node));
      return (
        here.some((touch) => {
          const other = there.find(({ group }) => group === touch.group);
          return apart(touch, a) + (other ? apart(other, b) : 0) >= FELT_OHMS;
        }) || there.some((touch) => apart(touch, b) >= FELT_OHMS)
      );
    },
    push(from, to) {
      const [into, out] = [feltOf(from), feltOf(to)];
      if (!into || !out) return null;
      const feltAt = (node: number) => into(node) - out(node);
      return {
        apart: feltAt(from) - feltAt(to),
        stray: strayOf(from) + strayOf(to),
        near: [...new Set([...matesOf(from), ...matesOf(to)])],
        feltAt,
      };
    },
  };
}

/** Ω between the most and the least that a group's pins feel of a push at a place, or from one to another. */
function rangeAt({ rows, beyond }: Touch, place: number, against: number | null = null): number {
  let least = beyond ? 0 : Number.POSITIVE_INFINITY;
  let most = beyond ? 0 : Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    const felt = (row[place] as number) - (against === null ? 0 : (row[against] as number));
    if (felt < least) least = felt;
    if (felt > most) most = felt;
  }
  return most - least;
}

interface PinsByIsland {
  /** By island: the points of each group's pins there. Groups of a single pin move nothing. */
  readonly onIsland: ReadonlyMap<number, ReadonlyMap<Group, readonly number[]>>;
  /** Groups with pins on more than one island, or on held points too. */
  readonly spread: ReadonlySet<Group>;
}

function pinsByIsland(
  groups: readonly Group[],
  { pointOf, islandOf }: Islands,
  piece: Int32Array,
  own: number,
): PinsByIsland {
  const onIsland = new Map<number, Map<Group, readonly number[]>>();
  const spread = new Set<Group>();
  for (const group of groups) {
    const found = new Map<number, number[]>();
    for (const { nodes } of group) {
      for (const node of nodes) {
        if (piece[node] !== own) continue;
        const at = pointOf[node] as number;
        const island = islandOf[at] as number;
        const known = found.get(island);
        if (!known) found.set(island, [at]);
        else if (!known.includes(at)) known.push(at);
      }
    }
    if (found.size > 1) spread.add(group);
    for (const [island, pins] of found) {
      if (island < 0 || (found.size === 1 && pins.length === 1)) continue;
      const known = onIsland.get(island) ?? new Map<Group, readonly number[]>();
      onIsland.set(island, known.set(group, pins));
    }
  }
  return { onIsland, spread };
}

/**
 * Adds by pin what a push there is felt at. Where pins are too many for that, returns instead what
 * a push at every one of them at once is felt at: more than any single one is.
 */
function addRows(
  rows: Map<number, Float64Array>,
  point: OperatingPoint,
  islands: Islands,
  island: number,
  groups: ReadonlyMap<Group, readonly number[]>,
  reference: number,
): Float64Array | null {
  const members = islands.points[island] as Int32Array;
  const pins: number[] = [];
  for (const own of groups.values()) {
    for (const pin of own) if (!pins.includes(pin)) pins.push(pin);
  }
  if (members.length <= SMALL_ISLAND) {
    feltOnIsland(islands, island, pins).forEach((row, index) => {
      rows.set(pins[index] as number, row);
    });
    return null;
  }
  const pushed = (nodes: readonly number[]) => {
    const volts = pushedInto(point, nodes, reference);
    return Float64Array.from(members, (member) => volts[member] as number);
  };
  if (pins.length > FEW_PINS) return pushed(pins);
  for (const pin of pins) rows.set(pin, pushed([pin]));
  return null;
}

/** Volts against the reference for one ampere into each of the nodes. */
function pushedInto(
  point: OperatingPoint,
  nodes: readonly number[],
  reference: number,
): Float64Array {
  const injected = new Float64Array(point.volts.length);
  for (const node of nodes) injected[node] = (injected[node] as number) + 1;
  injected[reference] = (injected[reference] as number) - nodes.length;
  const volts = point.factored.solve(injected);
  const zero = volts[reference] as number;
  return volts.map((one) => one - zero);
}

/** Unknowns that meet in a piece of circuit beyond this one act together. */
function groupUnknowns(
  unknowns: readonly Unknown[],
  piece: Int32Array,
  own: number,
): readonly Group[] {
  const together = new Groups(unknowns.length);
  const first = new Map<number, number>();
  unknowns.forEach(({ nodes }, index) => {
    for (const node of nodes) {
      const beyond = piece[node] as number;
      if (beyond === own) continue;
      const known = first.get(beyond);
      if (known === undefined) first.set(beyond, index);
      else together.join(index, known);
    }
  });
  const groups = new Map<number, Unknown[]>();
  unknowns.forEach((unknown, index) => {
    const key = together.of(index);
    const group = groups.get(key);
    if (group) group.push(unknown);
    else groups.set(key, [unknown]);
  });
  return [...groups.values()];
}
