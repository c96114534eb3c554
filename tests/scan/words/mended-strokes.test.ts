import { describe, expect, test } from "vitest";
import type { Stroke } from "../../../src/scan/words/line-strokes.ts";
import { patchesBetween } from "../../../src/scan/words/mended-strokes.ts";

/** A line three rows wide: what comes up to it stands in the row above it, or in the one below. */
const [ABOVE, BELOW] = [25, 29];

type Places = readonly [from: number, to: number];

function stroke(side: Stroke["side"], [from, to]: Places, more: Partial<Stroke> = {}): Stroke {
  const row = side === -1 ? ABOVE : BELOW;
  return { side, from, to, row, gap: BELOW - ABOVE, wide: 3, slope: 0, isBar: false, ...more };
}
const upper = (at: Places, more?: Partial<Stroke>) => stroke(-1, at, more);
const lower = (at: Places, more?: Partial<Stroke>) => stroke(1, at, more);

const patched = (strokes: readonly Stroke[], areOne = true) =>
  patchesBetween(strokes, () => areOne).map(({ rows, at }) => ({ rows, at }));

const through = (above: Places, below: Places) => ({ rows: [ABOVE, BELOW], at: [above, below] });

describe("what a line hid of letters", () => {
  test("strokes that point at one another are one, straight or slanting; others are not", () => {
    expect(patched([upper([10, 12]), lower([10, 12])])).toEqual([through([10, 12], [10, 12])]);
    const slanting = [upper([10, 12], { slope: 1 }), lower([14, 16], { slope: -1 })];
    expect(patched(slanting)).toEqual([through([10, 12], [14, 16])]);
    expect(patched([upper([10, 12]), lower([14, 16])])).toEqual([]);
  });

  test("a second stroke meets where two do already only if it points there nearly as well", () => {
    const stem = [upper([10, 12]), lower([10, 12])];
    expect(patched([...stem, lower([11, 13])])).toHaveLength(2);
    expect(patched([...stem, lower([12, 14])])).toHaveLength(1);
    expect(patched([upper([10, 12]), lower([12, 14])])).toHaveLength(1);
  });

  test("a stem goes on to the nearest end of a bar along the line, and to none far beside it", () => {
    const bar = upper([10, 30], { isBar: true });
    expect(patched([bar, lower([29, 31])])).toEqual([through([28, 30], [29, 31])]);
    expect(patched([bar, lower([40, 42])])).toEqual([]);
    const other = lower([20, 40], { isBar: true });
    expect(patched([bar, other])).toEqual([through([20, 30], [20, 30])]);
  });

  test("a curve whose ends lean to one another and hang together is closed as thick as it is", () => {
    const bowl = [upper([10, 12], { slope: 0.5 }), upper([20, 22], { slope: -0.5 })];
    const span = [10, 22];
    expect(patched(bowl)).toEqual([{ rows: [ABOVE, ABOVE + 4], at: [span, span] }]);
    expect(patched(bowl, false)).toEqual([]);
    expect(patched([upper([10, 12]), upper([20, 22])])).toEqual([]);
    const arch = [lower([10, 12], { slope: 0.5 }), lower([20, 22], { slope: -0.5 })];
    expect(patched(arch)).toEqual([{ rows: [BELOW - 4, BELOW], at: [span, span] }]);
  });

  test("two strokes that lean to one another across the line are one, far aside as they are", () => {
    const leaning = [upper([10, 12], { slope: 0.5 }), lower([20, 22], { slope: -0.5 })];
    expect(patched(leaning)).toEqual([through([10, 12], [20, 22])]);
    expect(patched([upper([10, 12], { slope: 0.5 }), lower([20, 22])])).toEqual([]);
  });
});
