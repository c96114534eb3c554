import type { SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import type { Box, Point } from "../../../src/base/index.ts";
import { netAt, type Traced, type TracedNet } from "../../../src/scan/index.ts";
import { line, traced } from "../../support/pen-and-paper.ts";

const isOne = (found: Traced, a: Point, b: Point) =>
  netAt(found, a, 6) !== null && netAt(found, a, 6) === netAt(found, b, 6);

const WORD: Box = { left: 90, top: 80, right: 150, bottom: 120 };
/** Strokes as letters have them, within the box. */
const letters = (pen: SKRSContext2D, top: number, bottom: number) => {
  for (const x of [98, 112, 126, 140]) line(pen, [x, top], [x, bottom]);
};

describe("words", () => {
  test("what lies in a word's box is no line", () => {
    const found = traced((pen) => letters(pen, 84, 116), {}, { words: [WORD] });
    expect(found.nets).toEqual([]);
  });

  test("a line that runs through a word, letters on it, goes on straight and has none of them", () => {
    const found = traced(
      (pen) => {
        line(pen, [20, 116], [220, 116]);
        letters(pen, 84, 116);
      },
      {},
      { words: [WORD] },
    );
    expect(found.nets).toHaveLength(1);
    const { runs, nodes } = found.nets[0] as TracedNet;
    expect(runs.map(({ points }) => points.length)).toEqual([2]);
    expect(nodes.map(({ kind }) => kind)).toEqual(["end", "end"]);
    expect(found.questions).toEqual([]);
  });

  test("a line that ends at a word ends there, and letters join nothing", () => {
    const found = traced(
      (pen) => {
        line(pen, [20, 100], [98, 100]);
        line(pen, [140, 100], [220, 100]);
        letters(pen, 84, 116);
      },
      {},
      { words: [WORD] },
    );
    expect(isOne(found, [40, 100], [200, 100])).toBe(false);
    expect(found.questions).toEqual([]);
    const left = netAt(found, [40, 100], 6) as TracedNet;
    expect(left.box.right).toBeLessThanOrEqual(WORD.left + 1);
  });

  test("two lines that letters touch are not joined by them", () => {
    const found = traced(
      (pen) => {
        line(pen, [20, 60], [220, 60]);
        line(pen, [20, 140], [220, 140]);
        line(pen, [112, 60], [112, 140]);
      },
      {},
      { words: [{ left: 100, top: 66, right: 124, bottom: 134 }] },
    );
    // One upright stroke through the whole word: a line runs through it.
    expect(isOne(found, [40, 60], [40, 140])).toBe(true);
    const letter = traced(
      (pen) => {
        line(pen, [20, 60], [220, 60]);
        line(pen, [20, 140], [220, 140]);
        line(pen, [104, 60], [104, 100], [120, 100], [120, 140]);
      },
      {},
      { words: [{ left: 96, top: 66, right: 128, bottom: 134 }] },
    );
    expect(isOne(letter, [40, 60], [40, 140])).toBe(false);
  });

  test("a stem that meets a line just inside a word's box is joined to it, and so is a corner there", () => {
    const found = traced(
      (pen) => {
        line(pen, [20, 116], [220, 116]);
        line(pen, [120, 116], [120, 210]);
      },
      {},
      { words: [WORD] },
    );
    expect(isOne(found, [40, 116], [120, 180])).toBe(true);
    const corner = traced(
      (pen) => line(pen, [20, 116], [146, 116], [146, 210]),
      {},
      { words: [WORD] },
    );
    expect(isOne(corner, [40, 116], [146, 180])).toBe(true);
  });
});
