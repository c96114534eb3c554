import type { SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import {
  across,
  BOTTOM,
  dot,
  down,
  followed,
  LEFT,
  LINE,
  line,
  MIDDLE,
  RIGHT,
  TOP,
} from "../../support/drawn-pages/small-sheet.ts";

describe("what only looks joined", () => {
  test("a thick line that jumps a thin one is no dot on it", () => {
    const { isOne, questions } = followed((pen) => {
      down(pen);
      for (const y of [15, 40, 160, 185]) line(pen, [15, y], [72, y]);
      pen.lineWidth = 3 * LINE;
      line(pen, [15, MIDDLE], [MIDDLE - 26, MIDDLE]);
      line(pen, [MIDDLE + 26, MIDDLE], [185, MIDDLE]);
      pen.beginPath();
      pen.arc(MIDDLE, MIDDLE, 26, Math.PI, 0);
      pen.stroke();
    });
    expect([isOne(LEFT, RIGHT), isOne(TOP, BOTTOM)]).toEqual([true, true]);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toEqual([]);
  });

  test("a letter that touches two lines is asked, a short straight line between them is none", () => {
    const between = (draw: (pen: SKRSContext2D) => void) =>
      followed((pen) => {
        across(pen);
        line(pen, [15, MIDDLE - 24], [185, MIDDLE - 24]);
        draw(pen);
      });
    const upper = [30, MIDDLE - 24] as const;
    const letter = between((pen) => {
      line(
        pen,
        [MIDDLE - 6, MIDDLE],
        [MIDDLE + 6, MIDDLE - 9],
        [MIDDLE - 5, MIDDLE - 15],
        [MIDDLE + 5, MIDDLE - 24],
      );
    });
    expect(letter.isOne(LEFT, upper)).toBe(false);
    expect(letter.questions.length).toBeGreaterThan(0);
    const straight = between((pen) => line(pen, [MIDDLE, MIDDLE], [MIDDLE, MIDDLE - 24]));
    expect(straight.isOne(LEFT, upper)).toBe(true);
    expect(straight.questions).toEqual([]);
  });

  test("a letter's stroke on one line that all but touches another is asked", () => {
    const { isOne, questions } = followed((pen) => {
      across(pen);
      line(pen, [15, MIDDLE - 28], [185, MIDDLE - 28]);
      line(pen, [MIDDLE, MIDDLE], [MIDDLE, MIDDLE - 20]);
    });
    expect(isOne(LEFT, [30, MIDDLE - 28])).toBe(false);
    expect(questions.map(({ kind }) => kind)).toEqual(["gap"]);
  });

  test("a stem that goes on in a stub on the other side of a line is asked", () => {
    const stub = (far: number) =>
      followed((pen) => {
        across(pen);
        line(pen, [MIDDLE, 15], [MIDDLE, MIDDLE + far]);
      });
    expect(stub(0).isOne(LEFT, TOP)).toBe(true);
    expect(stub(0).questions).toEqual([]);
    const { isOne, questions } = stub(8);
    expect(isOne(LEFT, RIGHT)).toBe(true);
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions).toHaveLength(1);
  });

  test("a line that is jumped, and broke off between the arc and its own corner, is no stem of a T", () => {
    const broken = (corner: number) =>
      followed((pen) => {
        line(pen, [15, MIDDLE], [MIDDLE - 14, MIDDLE]);
        line(pen, [MIDDLE + 14, MIDDLE], [185, MIDDLE]);
        pen.beginPath();
        pen.arc(MIDDLE, MIDDLE, 14, Math.PI, 0);
        pen.stroke();
        line(pen, [MIDDLE, 185], [MIDDLE, MIDDLE - 20]);
        line(pen, [MIDDLE, MIDDLE - 30], [MIDDLE, corner], [195, corner]);
      });
    const [far, near] = [broken(MIDDLE - 42), broken(MIDDLE - 36)];
    expect([far, near].map(({ isOne }) => isOne(LEFT, RIGHT))).toEqual([true, true]);
    expect([far, near].map(({ isOne }) => isOne(LEFT, BOTTOM))).toEqual([false, false]);
    expect(far.isOne(BOTTOM, [150, MIDDLE - 42])).toBe(true);
    expect(far.questions).toEqual([]);
    // Of what is left between the hole and the corner the way can't be told.
    expect(near.questions).toHaveLength(1);
  });

  test("letters that fill the corner of a line and touch another beside it join them to nothing", () => {
    const { isOne } = followed((pen) => {
      line(pen, [60, 15], [60, 132], [185, 132]);
      line(pen, [90, 15], [90, 185]);
      line(pen, [60, 123], [70, 120], [82, 121], [90, 117]);
      for (const x of [70, 82]) line(pen, [x, 120], [x, 132]);
    });
    expect(isOne([60, 40], [170, 132])).toBe(true);
    expect(isOne([90, 40], [90, 170])).toBe(true);
    expect(isOne([60, 40], [90, 40])).toBe(false);
  });

  test("two lines that cross twice, with a corner of each between, keep to themselves", () => {
    const { isOne, questions } = followed((pen) => {
      line(pen, [15, 90], [110, 90], [110, 185]);
      line(pen, [90, 15], [90, 110], [185, 110]);
    });
    expect([isOne([30, 90], [110, 170]), isOne([90, 30], [170, 110])]).toEqual([true, true]);
    expect(isOne([30, 90], [90, 30])).toBe(false);
    expect(questions).toEqual([]);
  });

  test("a crossing that lost two of its arms beside one another is no corner of one line", () => {
    const arms = (draw: (pen: SKRSContext2D) => void = () => {}) =>
      followed((pen) => {
        const [bump, beyond] = [MIDDLE + 4, MIDDLE + 14];
        line(pen, [15, MIDDLE], [bump, MIDDLE]);
        line(pen, [beyond, MIDDLE], [185, MIDDLE]);
        line(pen, [MIDDLE, 15], [MIDDLE, bump]);
        line(pen, [MIDDLE, beyond], [MIDDLE, 185]);
        draw(pen);
      });
    const { isOne, questions } = arms();
    expect(isOne(LEFT, TOP)).toBe(false);
    expect(questions.length).toBeGreaterThan(0);
    const dotted = arms((pen) => dot(pen, 3));
    expect(dotted.isOne(LEFT, TOP)).toBe(true);
    expect(dotted.isOne(RIGHT, BOTTOM)).toBe(true);
  });
});
