import { Groups } from "../../base/index.ts";
import type { Unknown } from "./branch.ts";

/** Unknowns that act together. */
export type Group = readonly Unknown[];

/** Pieces of circuit that an unknown may tie to one another. */
export function piecesTogether(piece: Int32Array, unknowns: readonly Unknown[]): Groups {
  const together = new Groups(piece.length);
  for (const { nodes } of unknowns) {
    for (const node of nodes)
      together.join(piece[nodes[0] as number] as number, piece[node] as number);
  }
  return together;
}

/** Unknowns that meet in a piece of circuit of their own act together. */
export function groupByFarPieces(
  unknowns: readonly Unknown[],
  piece: Int32Array,
  redPiece: number,
  blackPiece: number,
): readonly Group[] {
  const together = new Groups(unknowns.length);
  const firstIn = new Map<number, number>();
  unknowns.forEach((unknown, index) => {
    for (const node of unknown.nodes) {
      const own = piece[node] as number;
      if (own === redPiece || own === blackPiece) continue;
      const first = firstIn.get(own);
      if (first === undefined) firstIn.set(own, index);
      else together.join(index, first);
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
