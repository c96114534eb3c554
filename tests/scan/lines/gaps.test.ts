import { describe, expect, test } from "vitest";
import {
  BOTTOM,
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

describe("a hole in a line beside something else", () => {
  test("a letter's stroke next to it takes neither end from the other", () => {
    const { isOne, questions } = followed((pen) => {
      line(pen, [20, MIDDLE], [92, MIDDLE]);
      line(pen, [98, MIDDLE], [180, MIDDLE]);
      line(pen, [108, 40], [108, 160]);
      pen.lineWidth = LINE / 2;
      line(pen, [100, MIDDLE - 13], [92, MIDDLE - 5]);
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(questions).toEqual([]);
  });

  test("a square corner goes on in the little that is seen of a line at its part", () => {
    const { isOne, questions } = followed(
      (pen) => {
        line(pen, [20, MIDDLE], [38, MIDDLE]);
        line(pen, [45, MIDDLE], [48, MIDDLE]);
        line(pen, [48, MIDDLE], [48, 180]);
      },
      [partAt(5)],
    );
    expect(isOne([35, MIDDLE], [48, 150])).toBe(true);
    expect(questions).toEqual([]);
  });

  test("a hole right behind a corner is the line's, whatever lies where the corner came from", () => {
    const { isOne, questions } = followed((pen) => {
      line(pen, [20, MIDDLE], [90, MIDDLE]);
      line(pen, [94, MIDDLE], [104, MIDDLE], [104, 20]);
      pen.lineWidth = LINE / 2;
      line(pen, [94, MIDDLE + 16], [94, MIDDLE + 30]);
    });
    expect(isOne(LEFT, [104, 40])).toBe(true);
    expect(questions).toEqual([]);
  });
});

describe("a stem that broke right before the line it meets", () => {
  test.each([0, 3, 5])("is joined to it over the bump of %i pixels that is left of it", (bump) => {
    const { isOne, questions } = followed((pen) => {
      line(pen, [20, MIDDLE], [180, MIDDLE]);
      line(pen, [MIDDLE, MIDDLE], [MIDDLE, MIDDLE + LINE / 2 + bump]);
      line(pen, [MIDDLE, MIDDLE + LINE / 2 + bump + 5], [MIDDLE, 180]);
    });
    expect(isOne(LEFT, BOTTOM)).toBe(true);
    expect(questions).toEqual([]);
  });
});
