import type { Branch, Decider, Unknown } from "./branch.ts";
import { held, isActive, type Settled } from "./follow.ts";
import { nominal, type OperatingPoint } from "./operating-point.ts";
import type { Wiring } from "./wiring.ts";

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
): readonly Unknown[] => influenceFinder(point, unknowns)(red, black);

/** For many pairs of nodes of one state: what is common to them is worked out once. */
function influenceFinder(
  point: OperatingPoint,
  unknowns: readonly Unknown[],
): (red: number, black: number) => readonly Unknown[] {
  const { piece } = point.factored;
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
    const seen = groups.length > 0 ? transfer(point, red, black) : null;
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
function voltsByClosing(point: OperatingPoint, { nodes }: Unknown, seen: Float64Array): number {
  const [a, b] = nodes;
  if (a === undefined || b === undefined) return 0;
  const moved = Math.abs((seen[a] as number) - (seen[b] as number));
  if (moved < FELT || point.factored.piece[a] !== point.factored.piece[b]) return 0;
  const own = transfer(point, a, b);
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

/** What nobody knows about a settled state. */
export interface Doubts {
  readonly unknowns: readonly Unknown[];
  /** Branches that may or may not conduct. */
  isDoubted(branch: Branch): boolean;
  /** The state with every doubted branch open: where each unknown's influence is felt in full. */
  readonly point: OperatingPoint;
}

/**
 * The declared unknowns, fuses that would blow (`overloaded`), and the contacts of every relay or
 * module whose own state depends on an unknown.
 */
export function findDoubts(
  wiring: Wiring,
  settled: Settled,
  extra: readonly Branch[],
  overloaded: readonly Branch[],
): Doubts {
  const unknowns: Unknown[] = [...wiring.unknowns];
  const fuses = new Set(overloaded.map(({ owner }) => owner));
  for (const { a, b, owner } of overloaded) {
    unknowns.push({
      part: owner ?? "",
      nodes: [a, b],
      joint: true,
      what: `whether ${owner} holds: as drawn it carries far more than its rating`,
    });
  }
  const doubted = new Set<string>();
  const isDoubted = ({ gate, element, owner }: Branch) =>
    (gate !== null && doubted.has(gate.by)) ||
    (element?.law.is === "protection" && fuses.has(owner));
  const contacts = new Map<string, Branch[]>();
  for (const branch of settled.branches) {
    if (branch.gate === null) continue;
    const known = contacts.get(branch.gate.by);
    if (known) known.push(branch);
    else contacts.set(branch.gate.by, [branch]);
  }
  const doubt = (decider: Decider) => {
    doubted.add(decider.id);
    unknowns.push(...doubtsAbout(decider, contacts.get(decider.id) ?? []));
  };
  const open = () =>
    fuses.size + doubted.size === 0
      ? settled.point
      : held(wiring, settled.states, extra, nominal, false, isDoubted);

  for (const decider of wiring.deciders) {
    if (
      remembers(decider, settled, wiring.systemVoltage) ||
      settled.oscillating.includes(decider.id)
    )
      doubt(decider);
  }
  let point = open();
  for (let grown = unknowns.length > 0; grown; ) {
    grown = false;
    const find = influenceFinder(point, [...unknowns]);
    for (const decider of wiring.deciders) {
      if (doubted.has(decider.id)) continue;
      const moved =
        (decider.is === "level" && decider.power !== null && doubted.has(decider.power)) ||
        pairsOf(decider).some(([a, b]) => find(a, b).length > 0);
      if (!moved) continue;
      doubt(decider);
      grown = true;
    }
    if (grown) point = open();
  }
  return { unknowns, isDoubted, point };
}

/** Whether what it does hangs on what went before, and not on the present voltages alone. */
function remembers(decider: Decider, settled: Settled, systemVoltage: number): boolean {
  if (decider.is === "coil") return decider.latching;
  if (decider.is === "fed") return false;
  if (decider.power !== null && !settled.states.get(decider.power)) return false;
  switch (decider.does) {
    case "toggle":
      return true;
    case "flash":
      return isActive(decider, settled.point, systemVoltage);
    case "delay-off":
      return !isActive(decider, settled.point, systemVoltage);
    case "follow":
    case "invert":
    case "delay-on":
      return false;
  }
}

function pairsOf(decider: Decider): readonly (readonly [number, number])[] {
  switch (decider.is) {
    case "coil":
      return [[decider.a, decider.b]];
    case "fed":
      return decider.pairs;
    case "level":
      return decider.grounds.flatMap((ground) =>
        decider.input === null ? [] : [[decider.input, ground] as const],
      );
  }
}

const doubtsAbout = (decider: Decider, contacts: readonly Branch[]): readonly Unknown[] =>
  contacts.map((branch) => ({
    part: decider.part,
    nodes: [branch.a, branch.b],
    joint: branch.acts.is !== "source",
    what: doubtAbout(decider),
  }));

function doubtAbout(decider: Decider): string {
  if (decider.is === "level" && decider.does === "flash")
    return `which half of its flash ${decider.part} is in`;
  if (decider.is === "level" && (decider.does === "toggle" || decider.does === "delay-off"))
    return `what ${decider.part} has been told before`;
  if (decider.is !== "coil") return `what ${decider.part} is told to do`;
  return decider.latching
    ? `which way ${decider.part} was last latched`
    : `whether ${decider.part} pulls in`;
}
