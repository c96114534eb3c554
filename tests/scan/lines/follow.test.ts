import { describe, expect, test } from "vitest";
import type { Box } from "../../../src/base/index.ts";
import {
  across,
  BOTTOM,
  dot,
  down,
  followed,
  hole,
  LEFT,
  LINE,
  line,
  MIDDLE,
  RIGHT,
  TOP,
} from "../../support/drawn-pages/small-sheet.ts";

describe("where lines meet", () => {
  test("a plain crossing joins nothing", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      down(pen);
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toEqual([]);
  });

  test.each([3, 4, 5])("a dot %d lines wide joins all four", (widths) => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      down(pen);
      dot(pen, widths);
    });
    expect([isOne(LEFT, RIGHT), isOne(LEFT, TOP), isOne(LEFT, BOTTOM)]).toEqual([true, true, true]);
    expect(questions).toEqual([]);
  });

  test("ink that ran a little in the corners of a crossing is no dot", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      down(pen);
      dot(pen, 1.8);
    });
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a blob hardly larger than ink that ran is asked, and joins nothing", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      down(pen);
      dot(pen, 2.25);
    });
    expect(isOne(LEFT, TOP)).toBe(false);
    expect([isOne(LEFT, RIGHT), isOne(TOP, BOTTOM)]).toEqual([true, true]);
    expect(questions.map(({ kind }) => kind)).toEqual(["dot"]);
  });

  test("a dot with a white spot in one of its corners joins all four", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      down(pen);
      dot(pen, 3);
      hole(pen, MIDDLE + LINE, MIDDLE - LINE, LINE);
    });
    expect([isOne(LEFT, RIGHT), isOne(LEFT, TOP), isOne(LEFT, BOTTOM)]).toEqual([true, true, true]);
    expect(questions).toEqual([]);
  });

  test("the arc of a jump that its own ink filled is no dot", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      down(pen);
      pen.beginPath();
      pen.arc(MIDDLE, MIDDLE, 2 * LINE, Math.PI, 0);
      pen.fill();
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a T is one, with a dot or without", () => {
    for (const widths of [0, 4]) {
      const { isOne } = followed((pen) => {
        across(pen);
        line(pen, [MIDDLE, MIDDLE], [MIDDLE, 185]);
        dot(pen, widths);
      });
      expect([isOne(LEFT, RIGHT), isOne(LEFT, BOTTOM)]).toEqual([true, true]);
    }
  });

  test("a line that jumps another does not touch it", () => {
    const { isOne, questions } = followed((pen) => {
      down(pen);
      line(pen, [15, MIDDLE], [MIDDLE - 14, MIDDLE]);
      line(pen, [MIDDLE + 14, MIDDLE], [185, MIDDLE]);
      pen.beginPath();
      pen.arc(MIDDLE, MIDDLE, 14, Math.PI, 0);
      pen.stroke();
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toEqual([]);
  });
});

describe("words on lines", () => {
  test("a line runs on through a word written over it", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      pen.font = "24px sans-serif";
      pen.textAlign = "center";
      pen.textBaseline = "middle";
      pen.fillText("87a F3", MIDDLE, MIDDLE + 3);
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
  });

  test("a word that touches a line right beside a crossing is no arm of it", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      down(pen);
      pen.font = "22px sans-serif";
      pen.fillText("R2D", MIDDLE + 5, MIDDLE - 1);
    });
    expect([isOne(LEFT, RIGHT), isOne(TOP, BOTTOM)]).toEqual([true, true]);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toEqual([]);
  });

  test("a word that touches one line joins it to no other that it nearly reaches", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      line(pen, [15, MIDDLE - 26], [185, MIDDLE - 26]);
      pen.font = "24px sans-serif";
      pen.fillText("K4M", MIDDLE - 30, MIDDLE - 1);
    });
    expect(isOne(LEFT, [30, MIDDLE - 26])).toBe(false);
    expect(questions).toEqual([]);
  });
});

describe("holes in the print", () => {
  test("a hole right at a square corner, before it or in it, breaks no line", () => {
    for (const [x, y] of [
      [MIDDLE, MIDDLE],
      [MIDDLE, MIDDLE + 7],
      [MIDDLE + 7, MIDDLE],
    ] as const) {
      const { isOne } = followed((pen) => {
        line(pen, [185, MIDDLE], [MIDDLE, MIDDLE], [MIDDLE, 185]);
        hole(pen, x, y, 7);
      });
      expect(isOne(RIGHT, BOTTOM), `hole at ${x}, ${y}`).toBe(true);
    }
  });

  test("a crossing that lost its middle is two lines and no two corners", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      down(pen);
      hole(pen, MIDDLE, MIDDLE, 9);
    });
    expect([isOne(LEFT, RIGHT), isOne(TOP, BOTTOM)]).toEqual([true, true]);
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a white speck in a wide line parts no lines", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      pen.lineWidth = 9;
      down(pen);
      pen.fillStyle = "white";
      pen.fillRect(MIDDLE - 1, MIDDLE + 7, 3, 3);
    });
    expect([isOne(LEFT, RIGHT), isOne(TOP, BOTTOM)]).toEqual([true, true]);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toEqual([]);
  });

  test("a small one is bridged, a wide one asked, a very wide one left", () => {
    const seen = [6, 24, 60].map((size) => {
      const { isOne, questions } = followed((pen) => {
        across(pen);
        hole(pen, MIDDLE, MIDDLE, size);
      });
      return [isOne(LEFT, RIGHT), questions.length];
    });
    expect(seen).toEqual([
      [true, 0],
      [false, 1],
      [false, 0],
    ]);
  });

  test("a crossing that lost one arm is still a crossing", () => {
    const { isOne, bridges } = followed((pen) => {
      across(pen);
      down(pen);
      hole(pen, MIDDLE, MIDDLE + 6, 8);
    });
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(bridges).toHaveLength(1);
  });

  test("a crossing that lost an arm of each line, but for a stub, is still a crossing and no corner", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      down(pen);
      hole(pen, MIDDLE + 10, MIDDLE, 9);
      hole(pen, MIDDLE, MIDDLE + 10, 9);
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a crossing right before a round corner that lost an arm is still a crossing", () => {
    const { isOne } = followed((pen) => {
      across(pen);
      pen.beginPath();
      pen.moveTo(30, 80);
      pen.arcTo(MIDDLE, 80, MIDDLE, 185, 14);
      pen.lineTo(MIDDLE, 185);
      pen.stroke();
      hole(pen, MIDDLE, MIDDLE + 8, 9);
    });
    expect(isOne([40, 80], BOTTOM)).toBe(true);
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(LEFT, BOTTOM)).toBe(false);
  });

  test("a digit over a small dot is not the other half of the line that leaves it", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      line(pen, [MIDDLE, MIDDLE], [MIDDLE, 185]);
      dot(pen, 2.8);
      line(pen, [MIDDLE, MIDDLE - 42], [MIDDLE, MIDDLE - 16]);
    });
    expect([isOne(LEFT, RIGHT), isOne(LEFT, BOTTOM)]).toEqual([true, true]);
    expect(questions).toEqual([]);
  });

  test("a crossing that lost both arms of a line is still a crossing", () => {
    const { isOne } = followed((pen) => {
      down(pen);
      hole(pen, MIDDLE, MIDDLE, 12);
      across(pen);
    });
    expect(isOne(TOP, BOTTOM)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a jump that lost half of its arc still touches nothing", () => {
    const { isOne } = followed((pen) => {
      line(pen, [15, MIDDLE], [MIDDLE - 14, MIDDLE]);
      line(pen, [MIDDLE + 14, MIDDLE], [185, MIDDLE]);
      pen.beginPath();
      pen.arc(MIDDLE, MIDDLE, 14, Math.PI, 0);
      pen.stroke();
      hole(pen, MIDDLE + 7, MIDDLE - 12, 7);
      down(pen);
    });
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
  });

  test("a stem that broke off its T, or off its dot, is joined over the hole", () => {
    for (const [widths, size] of [
      [0, 12],
      [4, 24],
    ] as const) {
      const { isOne } = followed((pen) => {
        line(pen, [MIDDLE, MIDDLE], [MIDDLE, 185]);
        hole(pen, MIDDLE, MIDDLE, size);
        across(pen);
        dot(pen, widths);
      });
      expect(isOne(LEFT, BOTTOM), `dot ${widths}`).toBe(true);
    }
  });

  test("a line that stops well before another is not joined to it", () => {
    const { isOne } = followed((pen) => {
      line(pen, [MIDDLE, MIDDLE + 22], [MIDDLE, 185]);
      across(pen);
    });
    expect(isOne(LEFT, BOTTOM)).toBe(false);
  });
});

test("no line is followed through the box of a part", () => {
  const box: Box = { left: 80, top: 80, right: 120, bottom: 120 };
  const { isOne, questions } = followed(across, [box]);
  expect(isOne(LEFT, RIGHT)).toBe(false);
  expect(questions).toEqual([]);
});
