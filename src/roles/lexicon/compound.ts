import type { Meaning } from "./meaning.ts";

const LONGEST_COMPOUND = 60;

interface Cut {
  readonly from: number;
  readonly parts: number;
  readonly meanings: readonly Meaning[];
}

/**
 * What the parts of a word written as one mean (`SCHALTEREINGANG`, 圧力センサ入力), first to last;
 * null unless it is made of known parts throughout. The fewest parts, so the longest, count.
 */
export function partsInside(
  word: string,
  parts: ReadonlyMap<string, readonly Meaning[]>,
  joints: readonly string[],
): readonly (readonly Meaning[])[] | null {
  if (word.length > LONGEST_COMPOUND) return null;
  const best: (Cut | null)[] = [{ from: 0, parts: 0, meanings: [] }];
  for (let to = 1; to <= word.length; to++) {
    best[to] = null;
    for (let from = 0; from < to; from++) {
      const before = best[from];
      if (!before) continue;
      const meanings = partAt(word.slice(from, to), to === word.length, parts, joints);
      const sofar = best[to]?.parts ?? Number.POSITIVE_INFINITY;
      if (meanings && before.parts + 1 < sofar) {
        best[to] = { from, parts: before.parts + 1, meanings };
      }
    }
  }
  const found: (readonly Meaning[])[] = [];
  for (let cut = best[word.length]; cut && cut.parts > 0; cut = best[cut.from]) {
    found.unshift(cut.meanings);
  }
  return found.length > 0 ? found : null;
}

/** A part with what joins it to the next; the last one has nothing to be joined to. */
function partAt(
  stretch: string,
  isLast: boolean,
  parts: ReadonlyMap<string, readonly Meaning[]>,
  joints: readonly string[],
): readonly Meaning[] | null {
  for (const joint of isLast ? [""] : joints) {
    if (!stretch.endsWith(joint)) continue;
    const found = parts.get(stretch.slice(0, stretch.length - joint.length));
    if (found) return found;
  }
  return null;
}
