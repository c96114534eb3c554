import { cavityRef, type Plug } from "../../job/index.ts";
import type { Correction } from "../correction.ts";
import { markBySeries } from "../mark-series.ts";
import { defineRule } from "../rule.ts";

/** A plug of more cavities is none: what a mark should be is not looked for. */
const MOST_CAVITIES = 500;

export const duplicateMark = defineRule({
  id: "duplicate-mark",
  severity: "contradiction",
  about: "plug",
  find: ({ plug }) => {
    const counts = new Map<string, number>();
    for (const { mark } of plug.cavities) counts.set(mark, (counts.get(mark) ?? 0) + 1);
    return [...counts]
      .filter(([, count]) => count > 1)
      .map(([mark, count]) => ({
        subjects: [cavityRef(plug.id, mark)],
        // Of three alike nobody could tell which.
        corrections:
          count === 2 && plug.cavities.length <= MOST_CAVITIES ? correctedMarks(plug, mark) : [],
        message: `Plug ${plug.id} has ${count} cavities marked ${mark}. Read the marks again and correct one.`,
      }));
  },
});

/** Where the other marks run on in a series, what one of the two should be. */
function correctedMarks(plug: Plug, twice: string): readonly Correction[] {
  const marks = plug.cavities.map(({ mark }) => mark);
  return marks.flatMap((mark, place): readonly Correction[] => {
    const should = mark === twice ? markBySeries(marks, place) : null;
    if (should === null) return [];
    return [{ does: "correct-mark", cavity: cavityRef(plug.id, mark), place, mark: should }];
  });
}
