import { influences, type OperatingPoint, type Unknown, type Wiring } from "../solve/index.ts";
import { Ripples } from "../solve/ripple.ts";
import { Groups } from "./groups.ts";
import { type PieceReach, reachInPiece } from "./piece-reach.ts";

/**
 * What `influences` says of one pair of nodes, for all nodes of a machine at once: which of them
 * depend, against their reference, on something that nobody has said. By reciprocity a push at an
 * unknown part's pin is felt everywhere as a push anywhere would be felt there.
 */
export interface Reach {
  /** By node: 1 where it depends on an unknown. */
  readonly isUnknown: Uint8Array;
  /** Unknowns that anything depends on. */
  readonly felt: ReadonlySet<Unknown>;
  /** Whether what lies between two nodes depends on an unknown. */
  between(a: number, b: number): boolean;
}

/** Volts by which closing a contact of which nobody can tell may move what matters. */
const FELT_VOLTS = 0.4;
/** Ω of transfer below which that is not even looked at. */
const LEAST_OHMS = 1e-3;

export function reachOfUnknowns(
  wiring: Wiring,
  point: OperatingPoint,
  unknowns: readonly Unknown[],
): Reach {
  const isUnknown = new Uint8Array(wiring.nodeCount);
  const felt = new Set<Unknown>();
  if (unknowns.length === 0) return { isUnknown, felt, between: () => false };
  const { piece } = point.factored;
  const references = [...wiring.grounds]
    .reverse()
    .filter((node, index, all) => all.findIndex((one) => piece[one] === piece[node]) === index);
  const pieces = piecesTogether(piece, unknowns);

  const isReferred = new Uint8Array(piece.length);
  const isTied = new Uint8Array(piece.length);
  for (const one of references) {
    isReferred[piece[one] as number] = 1;
    isTied[pieces.of(piece[one] as number)] = 1;
  }
  for (let node = 0; node < wiring.nodeCount; node++) {
    const own = piece[node] as number;
    if (!isReferred[own] && isTied[pieces.of(own)]) isUnknown[node] = 1;
  }
  for (const unknown of unknowns) {
    const own = new Set(unknown.nodes.map((node) => piece[node] as number));
    if (own.size > 1 && [...own].some((one) => isReferred[one])) felt.add(unknown);
  }

  const inPiece = new Map<number, PieceReach>();
  const moved = new MovedByPoint();
  const ripples = new Ripples(point.mesh);
  for (const reference of references) {
    const own = reachInPiece(wiring, point, unknowns, reference);
    inPiece.set(piece[reference] as number, own);
    for (const group of own.felt) for (const unknown of group) felt.add(unknown);
    for (const unknown of unknowns) {
      const found = movedByClosing(point, unknown, own, reference, ripples);
      if (!found) continue;
      moved.add(found);
      for (const node of found.nodes) own.alsoFelt(node);
      if (found.nodes.length > 0) felt.add(unknown);
    }
    own.mark(isUnknown);
  }
  return {
    isUnknown,
    felt,
    between(a, b) {
      const own = piece[a] as number;
      if (own !== piece[b]) return pieces.of(own) === pieces.of(piece[b] as number);
      const reach = inPiece.get(own);
      if (!reach) return influences(point, unknowns, a, b).length > 0;
      if (reach.between(a, b)) return true;
      const near = [...moved.at(reach.pointOf(a)), ...moved.at(reach.pointOf(b))];
      return near.some((one) => one.between(a, b));
    },
  };
}

/** Pieces of circuit that an unknown may tie to one another. */
function piecesTogether(piece: Int32Array, unknowns: readonly Unknown[]): Groups {
  const together = new Groups(piece.length);
  for (const { nodes } of unknowns) {
    for (const node of nodes)
      together.join(piece[nodes[0] as number] as number, piece[node] as number);
  }
  return together;
}

/** What closing an open contact moves. */
interface Moved {
  /** Nodes that it moves against the reference, one for each point at least. */
  readonly nodes: readonly number[];
  /** Points that may feel it; null where that may be any. */
  readonly near: readonly number[] | null;
  between(a: number, b: number): boolean;
}

/** Contacts by the points that may feel them. */
class MovedByPoint {
  readonly #wide: Moved[] = [];
  readonly #near = new Map<number, Moved[]>();

  add(moved: Moved): void {
    if (moved.near === null) this.#wide.push(moved);
    for (const point of moved.near ?? []) {
      const known = this.#near.get(point);
      if (known) known.push(moved);
      else this.#near.set(point, [moved]);
    }
  }

  at(point: number): readonly Moved[] {
    return [...this.#wide, ...(this.#near.get(point) ?? [])];
  }
}

/** Null where both its ends are at much the same volts, or it is no contact. */
function movedByClosing(
  point: OperatingPoint,
  { joint, nodes: [a, b] }: Unknown,
  reach: PieceReach,
  reference: number,
  ripples: Ripples,
): Moved | null {
  const { piece } = point.factored;
  const own = piece[reference] as number;
  if (!joint || a === undefined || b === undefined || a === b) return null;
  if (piece[a] !== own || piece[b] !== own) return null;
  const across = Math.abs((point.volts[a] as number) - (point.volts[b] as number));
  if (across < FELT_VOLTS) return null;
  const push = reach.push(a, b);
  if (!push || push.stray * across >= FELT_VOLTS * push.apart)
    return rippled([a, b], across, reference, ripples);
  const enough = Math.max(LEAST_OHMS, (FELT_VOLTS * push.apart) / across);
  return {
    near: push.near,
    nodes: push.near.filter((node) => Math.abs(push.feltAt(node)) >= enough),
    between: (one, other) => Math.abs(push.feltAt(one) - push.feltAt(other)) >= enough,
  };
}

/** Follows what closing a contact does all over the machine, as where it takes the battery down. */
function rippled(
  [a, b]: readonly [number, number],
  across: number,
  reference: number,
  ripples: Ripples,
): Moved {
  const pushes = [
    [a, 1],
    [b, -1],
  ] as const;
  const near = ripples.from(pushes, Number.POSITIVE_INFINITY);
  const nearAt = (node: number) => near.volts[near.nodes.indexOf(node)] ?? 0;
  const enough = Math.max(LEAST_OHMS, (FELT_VOLTS * (nearAt(a) - nearAt(b))) / across);
  const far = ripples.from(pushes, enough / 4);
  const volts = new Map(far.nodes.map((node, index) => [node, far.volts[index] as number]));
  const at = (node: number) => volts.get(node) ?? 0;
  return {
    near: null,
    nodes: far.nodes.filter((node) => Math.abs(at(node) - at(reference)) >= enough),
    between: (one, other) => Math.abs(at(one) - at(other)) >= enough,
  };
}
