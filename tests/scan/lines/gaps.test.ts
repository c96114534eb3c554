import { describe, expect, test } from "vitest";
import {
  followed,
  LEFT,
  LINE,
  line,
  MIDDLE,
  RIGHT,
} from "../../support/drawn-pages/small-sheet.ts";

const partAt = (left: number) => ({ left, right: left + 15, top: 85, bottom: 115 });

/** A line from part to part but for two holes of so many line widths, and what is left between them. */
const withPiece = (hole: number, piece: number) =>
  followed(
    (pen) => {
      const half = (piece * LINE) / 2;
      line(pen, [20, MIDDLE], [MIDDLE - half - hole * LINE, MIDDLE]);
      line(pen, [MIDDLE - half, MIDDLE], [MIDDLE + half, MIDDLE]);
      line(pen, [MIDDLE + half + hole * LINE, MIDDLE], [180, MIDDLE]);
    },
    [partAt(5), partAt(180)],
  );

describe("a short piece beside holes in a line", () => {
  test.each([3, 5, 10])("%i line widths of it between two small holes are the line's", (piece) => {
    const { isOne, bridges, questions } = withPiece(3, piece);
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(bridges).toHaveLength(2);
    expect(questions).toEqual([]);
  });

  test("between two wide holes it may be anything", () => {
    expect(withPiece(6, 5).isOne(LEFT, RIGHT)).toBe(false);
  });

  test("behind one hole, with nothing beyond it, it is asked of", () => {
    const { isOne, questions } = followed(
      (pen) => {
        line(pen, [20, MIDDLE], [90, MIDDLE]);
        line(pen, [102, MIDDLE], [122, MIDDLE]);
      },
      [partAt(5)],
    );
    expect(isOne(LEFT, [112, MIDDLE])).toBe(false);
    expect(questions).toHaveLength(1);
  });
});
