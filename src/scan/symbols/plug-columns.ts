import { boxAround, distance, type Point, turn as turned } from "../../base/index.ts";
import type { SymbolProposal } from "./symbol-proposal.ts";

/** Symbol heights between neighbours of one column, at most; shares by which they may differ. */
const FARTHEST = 4;
const UNEVEN = 0.15;
/** A symbol's height in its units, and how far neighbours may be out of line, in units. */
const HEIGHT = 1.6;
const ASKEW = 0.5;
/** Units between two pins of an inline plug as it is drawn. */
const PITCH = 2;

/** Inline plugs that stand in one column, evenly and the same way round, as one with a pin for each. */
export function inColumns(found: readonly SymbolProposal[]): SymbolProposal[] {
  const open = new Set(found.filter(({ kind, example }) => kind === "inline" && !example));
  const others = found.filter((one) => !open.has(one));
  const columns: SymbolProposal[] = [];
  for (const turn of [0, 90, 180, 270] as const) {
    // Along the plug's own axes: lines run along x, the column along y.
    const own = ({ at }: SymbolProposal): Point => turned(at, -turn);
    const same = [...open].filter((one) => one.turn === turn).sort((a, b) => own(a)[1] - own(b)[1]);
    for (const first of same) {
      if (!open.delete(first)) continue;
      const column = [first];
      let pitch = 0;
      for (const next of same) {
        const last = column.at(-1) as SymbolProposal;
        const [dx, dy] = [own(next)[0] - own(last)[0], own(next)[1] - own(last)[1]];
        if (!open.has(next) || dy <= 0 || dy > FARTHEST * HEIGHT * last.unit) continue;
        if (Math.abs(dx) > ASKEW * last.unit) continue;
        if (pitch > 0 && Math.abs(dy / pitch - 1) > UNEVEN) continue;
        pitch = pitch || dy;
        column.push(next);
        open.delete(next);
      }
      columns.push(column.length === 1 ? first : asOne(column));
    }
  }
  return [...others, ...columns];
}

function asOne(column: readonly SymbolProposal[]): SymbolProposal {
  const [first, last] = [column[0] as SymbolProposal, column.at(-1) as SymbolProposal];
  return {
    ...first,
    box: boxAround(column.map(({ box }) => box)),
    at: [(first.at[0] + last.at[0]) / 2, (first.at[1] + last.at[1]) / 2],
    unit: distance(first.at, last.at) / (column.length - 1) / PITCH,
    confidence: Math.min(...column.map(({ confidence }) => confidence)),
    ends: column.flatMap(({ ends }) => ends),
    ways: column.length,
  };
}
