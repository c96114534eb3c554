import type { Branch, Decider, Unknown } from "./branch.ts";
import { between, type Settled } from "./follow.ts";
import type { OperatingPoint } from "./operating-point.ts";
import type { Wiring } from "./wiring.ts";

/**
 * What a quantity depends on that nobody knows. Pushing one ampere in at red and out at black
 * gives, by reciprocity, the volts that an ampere anywhere else would add between red and black:
 * where an unknown part sees a difference between its own pins, it can move the reading.
 */

/** Ω of transfer below which an unknown part's amps move nothing that matters. */
const NO_INFLUENCE = 0.5;

/** Volts at every node per ampere pushed from black to red; null where they do not hang together. */
export function transfer(point: OperatingPoint, red: number, black: number): Float64Array | null {
  if (point.factored.piece[red] !== point.factored.piece[black]) return null;
  const injected = new Float64Array(point.volts.length);
  injected[red] = (injected[red] as number) + 1;
  injected[black] = (injected[black] as number) - 1;
  return point.factored.solve(injected);
}

/** The unknowns that could change what lies between two nodes. */
export function influences(
  point: OperatingPoint,
  unknowns: readonly Unknown[],
  red: number,
  black: number,
): readonly Unknown[] {
  const { piece } = point.factored;
  const groups = groupByFarPieces(unknowns, piece, piece[red] as number, piece[black] as number);
  const seen = transfer(point, red, black);
  return groups.flatMap((group) => {
    const nodes = group.flatMap((unknown) => unknown.nodes);
    if (seen === null) {
      const touches = (node: number) => nodes.some((other) => piece[other] === piece[node]);
      return touches(red) && touches(black) ? group : [];
    }
    const felt = nodes
      .filter((node) => piece[node] === piece[red])
      .map((node) => seen[node] as number);
    if (felt.length < 2) return [];
    return Math.max(...felt) - Math.min(...felt) >= NO_INFLUENCE ? group : [];
  });
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
    groups.set(key, [...(groups.get(key) ?? []), unknown]);
  });
  return [...groups.values()];
}

/**
 * All unknowns of a settled state: the declared ones, fuses that would blow, and the contacts of
 * every relay or module whose own state depends on an unknown.
 */
export function spreadUnknowns(
  wiring: Wiring,
  settled: Settled,
  first: readonly Unknown[],
): readonly Unknown[] {
  const unknowns: Unknown[] = [...first];
  const doubted = new Set<string>();
  const doubt = (decider: Decider) => {
    doubted.add(decider.id);
    unknowns.push(...contactsOf(settled.branches, decider));
  };
  for (const decider of wiring.deciders)
    if (settled.oscillating.includes(decider.id)) doubt(decider);
  for (let grown = true; grown && unknowns.length > 0; ) {
    grown = false;
    for (const decider of wiring.deciders) {
      if (doubted.has(decider.id)) continue;
      const moved =
        (decider.is === "level" && decider.power !== null && doubted.has(decider.power)) ||
        pairsOf(decider).some(([a, b]) => influences(settled.point, unknowns, a, b).length > 0);
      if (!moved) continue;
      doubt(decider);
      grown = true;
    }
  }
  return unknowns;
}

function pairsOf(decider: Decider): readonly (readonly [number, number])[] {
  switch (decider.is) {
    case "coil":
      return [[decider.a, decider.b]];
    case "fed":
      return decider.pairs;
    case "level":
      return decider.grounds.map((ground) => [decider.input, ground] as const);
  }
}

const contactsOf = (branches: readonly Branch[], decider: Decider): readonly Unknown[] =>
  branches
    .filter((branch) => branch.gate?.by === decider.id)
    .map((branch) => ({
      part: decider.part,
      nodes: [branch.a, branch.b],
      what: `whether ${decider.part} ${decider.is === "coil" ? "pulls in" : "is driven"}`,
    }));

/** Whether a pair of nodes has the least thing in common. */
export const hangsTogether = (point: OperatingPoint, a: number, b: number): boolean =>
  between(point, a, b) !== null;
