import { listAnd } from "../../roles/index.ts";
import type { Move } from "./rearrangement.ts";
import type { Slip } from "./slips.ts";
import type { Place } from "./word-column.ts";

/** A slip as a clause: "the words of pins 3 and 5 are exchanged". */
export function slipInWords(slip: Slip, column: readonly Place[]): string {
  const [first, last] = [column[slip.first]?.pin ?? "", column[slip.last]?.pin ?? ""];
  const run = `all words from pin ${first} to pin ${last}`;
  switch (slip.is) {
    case "exchanged":
      return exchanged(first, last);
    case "shifted": {
      const by = Math.abs(slip.by) === 1 ? "one pin" : `${Math.abs(slip.by)} pins`;
      const [end, start] = slip.by > 0 ? ["last", "first"] : ["first", "last"];
      const pushed =
        Math.abs(slip.by) === 1
          ? `the ${end} pin's word stands at the ${start} pin`
          : `those of the ${end} pins stand at the ${start}`;
      return `${run} are shifted by ${by}, and ${pushed}`;
    }
    case "mirrored": {
      const isWhole = slip.first === 0 && slip.last === column.length - 1;
      return isWhole
        ? `the column from pin ${first} to pin ${last} is printed upside down`
        : `${run} are mirrored, the first at the last pin`;
    }
    case "turned-in-pairs":
      return `${run} are exchanged two by two, as where two columns are read left for right`;
  }
}

const exchanged = (a: string, b: string) => `the words of pins ${a} and ${b} are exchanged`;

/** Moves that are exchanges of two each as a clause; null where any is not. */
export function inPairs(moves: readonly Move[]): string | null {
  const isPaired = ({ from, to }: Move) =>
    moves.some((other) => other.from === to && other.to === from);
  if (!moves.every(isPaired)) return null;
  const index = ({ module, pin }: Place) => module.pins.findIndex(({ id }) => id === pin);
  return listAnd(
    moves
      .filter(({ from, to }) => index(from) < index(to))
      .map(({ from, to }) => exchanged(from.pin, to.pin)),
  );
}
