import type { OperatingPoint } from "./operating-point.ts";
import { changedMesh, type Mesh, piecesOf, voltsOf, Workspace } from "./star-mesh.ts";

/** The last that was asked of each point: one prediction asks for it several times. */
const transfers = new WeakMap<
  OperatingPoint,
  { readonly red: number; readonly black: number; readonly seen: Float64Array | null }
>();

/** Volts at every node per ampere pushed from black to red; null where they do not hang together. */
export function transfer(point: OperatingPoint, red: number, black: number): Float64Array | null {
  const known = transfers.get(point);
  if (known && known.red === red && known.black === black) return known.seen;
  const seen = transferAfresh(point, red, black);
  transfers.set(point, { red, black, seen });
  return seen;
}

function transferAfresh(point: OperatingPoint, red: number, black: number): Float64Array | null {
  if (point.factored.piece[red] !== point.factored.piece[black]) return null;
  const injected = new Float64Array(point.volts.length);
  injected[red] = (injected[red] as number) + 1;
  injected[black] = (injected[black] as number) - 1;
  return point.factored.solve(injected);
}

/** The same with junctions that block joined in, as they may conduct where parts are a little other. */
export function transferBeyond(
  point: OperatingPoint,
  red: number,
  black: number,
): Float64Array | null {
  const mesh = withJunctions(point);
  const { piece } = piecesOf(mesh);
  if (piece[red] !== piece[black]) return null;
  const injected = new Float64Array(point.volts.length);
  injected[red] = (injected[red] as number) + 1;
  injected[black] = (injected[black] as number) - 1;
  return voltsOf(mesh, injected);
}

/**
 * Ω that a blocking junction counts with here, so that what lies beyond it is felt: far more than
 * what it lies across, far less than a meter (our own).
 */
export const BLOCKED_OHMS = 1000;

/**
 * The mesh of a point with the junctions that block there joined in: an unknown part beyond one
 * could make it conduct.
 */
export function withJunctions({ mesh, siemens, blocked }: OperatingPoint): Mesh {
  if (blocked.length === 0) return mesh;
  const joined = siemens.slice();
  for (const index of blocked) joined[index] = 1 / BLOCKED_OHMS;
  return changedMesh(mesh, mesh.plan, joined, blocked, new Workspace(mesh.sums.length));
}
