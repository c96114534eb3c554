import { addTo, Groups } from "../../base/index.ts";
import type { Branch } from "./branch.ts";
import type { OperatingPoint } from "./operating-point.ts";
import { changedMesh, piecesOf, voltsOf, Workspace } from "./star-mesh.ts";

/** Ω of what is joined, as of a good contact (our own). */
const JOINED_OHMS = 0.1;

/**
 * An operating point with what hangs loose tied on: diodes that block and contacts of relays and
 * modules that are open, as far as each ties together what nothing else does. No current flows in any
 * of them, so that nothing else moves; but what is done to a loose line is felt beyond them.
 */
export interface Loosened {
  /** Number of the piece that each node belongs to. */
  readonly piece: Int32Array;
  readonly volts: Float64Array;
  /** Volts at every node per ampere pushed from black to red; null where they do not hang together. */
  transfer(red: number, black: number): Float64Array | null;
}

/** `branches`: those of the net that the point is of, what is held in it included. */
export function loosened(point: OperatingPoint, branches: readonly Branch[]): Loosened {
  const { factored, mesh, siemens } = point;
  const pieces = new Groups(factored.references.length);
  const joints: { readonly index: number; readonly a: number; readonly b: number }[] = [];
  branches.forEach(({ a, b, acts, gate }, index) => {
    if (siemens[index] !== 0 || (gate === null && acts.is !== "junction")) return;
    const [one, other] = [factored.piece[a] as number, factored.piece[b] as number];
    if (pieces.of(one) === pieces.of(other)) return;
    pieces.join(one, other);
    joints.push({ index, a, b });
  });
  if (joints.length === 0)
    return {
      piece: factored.piece,
      volts: point.volts,
      transfer: transferIn(mesh, factored.piece),
    };
  const joined = siemens.slice();
  for (const { index } of joints) joined[index] = 1 / JOINED_OHMS;
  const changed = joints.map(({ index }) => index);
  const next = changedMesh(mesh, mesh.plan, joined, changed, new Workspace(mesh.sums.length));
  const { piece } = piecesOf(next);
  return { piece, volts: shifted(point, joints, piece), transfer: transferIn(next, piece) };
}

const transferIn =
  (mesh: OperatingPoint["mesh"], piece: Int32Array): Loosened["transfer"] =>
  (red, black) => {
    if (piece[red] !== piece[black]) return null;
    const injected = new Float64Array(piece.length);
    injected[red] = (injected[red] as number) + 1;
    injected[black] = (injected[black] as number) - 1;
    return voltsOf(mesh, injected);
  };

/** Each piece raised so that both ends of what joins it lie alike. */
function shifted(
  { factored, volts }: OperatingPoint,
  joints: readonly { readonly a: number; readonly b: number }[],
  together: Int32Array,
): Float64Array {
  const next = new Map<number, { readonly to: number; readonly by: number }[]>();
  for (const { a, b } of joints) {
    const [one, other] = [factored.piece[a] as number, factored.piece[b] as number];
    const by = (volts[a] as number) - (volts[b] as number);
    addTo(next, one, { to: other, by });
    addTo(next, other, { to: one, by: -by });
  }
  const shift = new Map<number, number>();
  // the first piece of each that hangs together stays
  const begun = new Set<number>();
  factored.references.forEach((reference, first) => {
    const whole = together[reference] as number;
    if (shift.has(first) || begun.has(whole)) return;
    begun.add(whole);
    shift.set(first, 0);
    const queue = [first];
    for (const from of queue) {
      for (const { to, by } of next.get(from) ?? []) {
        if (shift.has(to)) continue;
        shift.set(to, (shift.get(from) as number) + by);
        queue.push(to);
      }
    }
  });
  return volts.map((own, node) => own + (shift.get(factored.piece[node] as number) ?? 0));
}
