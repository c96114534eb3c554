/**
 * What a quantity depends on that nobody knows, by the plain way: one whole solution for every
 * pair of nodes, every unknown looked at. The oracle of src/circuit/solve/influence.ts.
 */
import {
  type Branch,
  type Conductor,
  factor,
  type OperatingPoint,
  type Unknown,
} from "../../src/circuit/index.ts";

const NO_INFLUENCE = 0.5;
const NO_VOLTS = 0.4;
const FELT = 1e-3;

/** What blocks counts with a kilohm: an unknown part beyond it could make it conduct. */
const BLOCKED_OHMS = 1000;

/** One state, with the junctions that block there joined in. */
interface Joined {
  readonly piece: Int32Array;
  readonly volts: Float64Array;
  transfer(red: number, black: number): Float64Array | null;
}

/** `branches` in the order of the point's. */
export function slowInfluence(
  branches: readonly Branch[],
  point: OperatingPoint,
  unknowns: readonly Unknown[],
): (red: number, black: number) => readonly Unknown[] {
  const conductors = branches.flatMap(({ a, b }, index): Conductor[] => {
    const ohms = point.blocked.includes(index) ? BLOCKED_OHMS : (point.ohms[index] as number);
    return a !== b && Number.isFinite(ohms) ? [{ a, b, siemens: 1 / ohms }] : [];
  });
  const { piece, solve } = factor(point.volts.length, conductors);
  const joined: Joined = {
    piece,
    volts: point.volts,
    transfer(red, black) {
      if (piece[red] !== piece[black]) return null;
      const injected = new Float64Array(point.volts.length);
      injected[red] = 1;
      injected[black] = red === black ? 0 : -1;
      return solve(injected);
    },
  };
  return influenceFinder(joined, unknowns);
}

/** For many pairs of nodes of one state: what is common to them is worked out once. */
function influenceFinder(
  point: Joined,
  unknowns: readonly Unknown[],
): (red: number, black: number) => readonly Unknown[] {
  const { piece } = point;
  const groupings = new Map<string, readonly (readonly Unknown[])[]>();
  const groupsFor = (redPiece: number, blackPiece: number) => {
    const key = `${redPiece} ${blackPiece}`;
    const known = groupings.get(key);
    if (known) return known;
    const groups = groupByFarPieces(unknowns, piece, redPiece, blackPiece);
    groupings.set(key, groups);
    return groups;
  };
  return (red, black) => {
    const redPiece = piece[red] as number;
    const blackPiece = piece[black] as number;
    const groups = groupsFor(redPiece, blackPiece);
    if (redPiece !== blackPiece) {
      const touches = (group: readonly Unknown[], own: number) =>
        group.some(({ nodes }) => nodes.some((node) => piece[node] === own));
      return groups.flatMap((group) =>
        touches(group, redPiece) && touches(group, blackPiece) ? group : [],
      );
    }
    const seen = groups.length > 0 ? point.transfer(red, black) : null;
    if (!seen) return [];
    return groups.flatMap((group) => {
      if (feltRange(group, piece, redPiece, seen) >= NO_INFLUENCE) return group;
      return group.filter(
        (unknown) => unknown.joint && voltsByClosing(point, unknown, seen) >= NO_VOLTS,
      );
    });
  };
}

/** Ω between the most and the least that a group's nodes in one piece feel. */
function feltRange(
  group: readonly Unknown[],
  piece: Int32Array,
  own: number,
  seen: Float64Array,
): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { nodes } of group) {
    for (const node of nodes) {
      if (piece[node] !== own) continue;
      const felt = seen[node] as number;
      if (felt < least) least = felt;
      if (felt > most) most = felt;
    }
  }
  return most - least;
}

/** How far closing an open joint moves what `seen` looks at, volts. */
function voltsByClosing(point: Joined, { nodes }: Unknown, seen: Float64Array): number {
  const [a, b] = nodes;
  if (a === undefined || b === undefined) return 0;
  const moved = Math.abs((seen[a] as number) - (seen[b] as number));
  if (moved < FELT || point.piece[a] !== point.piece[b]) return 0;
  const own = point.transfer(a, b);
  if (!own) return 0;
  const ohms = (own[a] as number) - (own[b] as number);
  return (moved / ohms) * Math.abs((point.volts[a] as number) - (point.volts[b] as number));
}

/** Unknowns that meet in a piece of circuit of their own act together. */
function groupByFarPieces(
  unknowns: readonly Unknown[],
  piece: Int32Array,
  redPiece: number,
  blackPiece: number,
): readonly (readonly Unknown[])[] {
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
