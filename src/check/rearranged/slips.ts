import type { WordColumn } from "./word-column.ts";

/** A slip of the pen, as it happens in one go; indices into the column, first and last included. */
export type Slip =
  | { readonly is: "exchanged"; readonly first: number; readonly last: number }
  /** Every word stands `by` places too low (too high where negative); those pushed off stand at the other end. */
  | { readonly is: "shifted"; readonly first: number; readonly last: number; readonly by: number }
  | { readonly is: "mirrored"; readonly first: number; readonly last: number }
  /** Two columns read as one line each, left for right. */
  | { readonly is: "turned-in-pairs"; readonly first: number; readonly last: number };

export interface FittingSlip {
  readonly slip: Slip;
  /** The words as they stand once it is undone. */
  readonly texts: readonly string[];
  /** Places whose word is another then. */
  readonly count: number;
}

/** Shorter runs are told apart from an exchange by nothing. */
const SHORTEST_SHIFT = 3;
const SHORTEST_MIRROR = 4;
/** In longer columns shifts by more than one place are not looked for, in still longer ones no runs. */
const LONGEST_FOR_ALL_SHIFTS = 60;
const LONGEST_FOR_RUNS = 150;

/** Every slip that, undone, leaves no word contradicted; slips that come to the same words once. */
export function fittingSlips(column: WordColumn): readonly FittingSlip[] {
  const found = new Map<string, FittingSlip>();
  for (const slip of candidates(column)) {
    const fitting = undone(column, slip);
    const key = fitting?.texts.join("\n");
    if (fitting && key !== undefined && !found.has(key)) found.set(key, fitting);
  }
  return [...found.values()];
}

/** Plainest first. None of them leaves a wrong word where it is. */
function* candidates({ texts, wrong }: WordColumn): Iterable<Slip> {
  const [firstWrong, lastWrong] = [wrong[0] ?? 0, wrong.at(-1) ?? 0];
  if (wrong.length <= 2) {
    for (let other = 0; other < texts.length; other++) {
      const pair = wrong.length === 2 ? wrong : [firstWrong, other];
      const [first, last] = [Math.min(...pair), Math.max(...pair)];
      if (first !== last) yield { is: "exchanged", first, last };
    }
  }
  if (texts.length > LONGEST_FOR_RUNS) return;
  for (let first = 0; first <= firstWrong; first++) {
    for (let last = texts.length - 1; last >= lastWrong; last--) {
      const length = last - first + 1;
      if (length >= SHORTEST_SHIFT) {
        yield { is: "shifted", first, last, by: 1 };
        yield { is: "shifted", first, last, by: -1 };
      }
      if (length >= SHORTEST_MIRROR) {
        yield { is: "mirrored", first, last };
        if (length % 2 === 0) yield { is: "turned-in-pairs", first, last };
      }
      if (texts.length > LONGEST_FOR_ALL_SHIFTS) continue;
      for (let by = 2; by <= length / 2; by++) {
        yield { is: "shifted", first, last, by };
        yield { is: "shifted", first, last, by: -by };
      }
    }
  }
}

/** Where the word at an index belongs. */
function rightPlace(slip: Slip, index: number): number {
  const { first, last } = slip;
  if (index < first || index > last) return index;
  const length = last - first + 1;
  switch (slip.is) {
    case "exchanged":
      return index === first ? last : index === last ? first : index;
    case "shifted":
      return first + ((index - first - slip.by + length) % length);
    case "mirrored":
      return first + last - index;
    case "turned-in-pairs":
      return first + ((index - first) ^ 1);
  }
}

function undone({ texts, fits }: WordColumn, slip: Slip): FittingSlip | null {
  for (let word = slip.first; word <= slip.last; word++) {
    if (!fits(word, rightPlace(slip, word))) return null;
  }
  const moved = [...texts];
  for (let word = slip.first; word <= slip.last; word++) {
    moved[rightPlace(slip, word)] = texts[word] ?? "";
  }
  return { slip, texts: moved, count: moved.filter((text, at) => text !== texts[at]).length };
}
