import type { SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { type LineAnswer, netAt, type Traced } from "../../../src/scan/index.ts";
import { dot, hole, line, traced } from "../../support/pen-and-paper.ts";

const LEFT: Point = [40, 100];
const RIGHT: Point = [200, 100];
const TOP: Point = [120, 40];
const BOTTOM: Point = [120, 180];

const isOne = (found: Traced, a: Point, b: Point): boolean => {
  const [one, other] = [netAt(found, a, 6), netAt(found, b, 6)];
  expect(one, `a line at ${a}`).not.toBeNull();
  expect(other, `a line at ${b}`).not.toBeNull();
  return one === other;
};

const across = (pen: SKRSContext2D) => line(pen, [30, 100], [210, 100]);
const down = (pen: SKRSContext2D) => line(pen, [120, 30], [120, 200]);
const answered = (draw: (pen: SKRSContext2D) => void, ...answers: readonly LineAnswer[]) =>
  traced(draw, {}, { answers });

describe("what the user said of a place", () => {
  /** A hole wide enough to be doubted. */
  const broken = (pen: SKRSContext2D) => {
    across(pen);
    hole(pen, [120, 100], 24);
  };

  test("a doubtful hole is asked about where it is, once", () => {
    const { questions, nets } = answered(broken);
    expect(questions).toHaveLength(1);
    expect(questions[0]?.kind).toBe("gap");
    expect(
      Math.hypot((questions[0]?.at[0] ?? 0) - 120, (questions[0]?.at[1] ?? 0) - 100),
    ).toBeLessThan(3);
    expect([...(questions[0]?.nets ?? [])].sort()).toEqual(nets.map(({ id }) => id).sort());
  });

  test("a doubtful hole that is joined is one line, one that is not stays two; nothing is asked", () => {
    for (const joined of [true, false]) {
      const found = answered(broken, { at: [123, 98], joined });
      expect(isOne(found, LEFT, RIGHT)).toBe(joined);
      expect(found.questions).toEqual([]);
      if (joined)
        expect(netAt(found, LEFT, 6)?.runs.map(({ points }) => points.length)).toEqual([2]);
    }
  });

  test("an answer far from the place changes nothing", () => {
    expect(answered(broken, { at: [120, 150], joined: true }).questions).toHaveLength(1);
  });

  test("a plain crossing is joined where the user says so", () => {
    const draw = (pen: SKRSContext2D) => {
      across(pen);
      down(pen);
    };
    expect(isOne(answered(draw), LEFT, TOP)).toBe(false);
    const found = answered(draw, { at: [121, 101], joined: true });
    expect(isOne(found, LEFT, TOP) && isOne(found, TOP, BOTTOM)).toBe(true);
    expect(netAt(found, LEFT, 6)?.nodes.filter(({ kind }) => kind === "joint")).toHaveLength(1);
  });

  test("at a dot that is none, both lines go straight on", () => {
    const found = answered(
      (pen) => {
        across(pen);
        down(pen);
        dot(pen, [120, 100], 4);
      },
      { at: [120, 100], joined: false },
    );
    expect(isOne(found, LEFT, RIGHT) && isOne(found, TOP, BOTTOM)).toBe(true);
    expect(isOne(found, LEFT, TOP)).toBe(false);
  });

  test("at a T that is none, the stem is off", () => {
    const found = answered(
      (pen) => {
        across(pen);
        line(pen, [120, 100], [120, 200]);
      },
      { at: [120, 100], joined: false },
    );
    expect(isOne(found, LEFT, RIGHT)).toBe(true);
    expect(isOne(found, LEFT, BOTTOM)).toBe(false);
  });

  test("a bridged hole is cut where the user says so, and nothing is asked", () => {
    const found = answered(
      (pen) => {
        across(pen);
        hole(pen, [120, 100], 6);
      },
      { at: [120, 100], joined: false },
    );
    expect(isOne(found, LEFT, RIGHT)).toBe(false);
    expect(found.questions).toEqual([]);
  });

  test("a plain line is cut where the user says so", () => {
    const found = answered(across, { at: [130, 101], joined: false });
    expect(isOne(found, LEFT, RIGHT)).toBe(false);
    expect(found.questions).toEqual([]);
  });

  describe("that it is no line", () => {
    const stray = (at: Point): LineAnswer => ({ at, joined: false, stray: true });

    test("a scratch that ends on a line goes, from its end to the joint, and the line stays as it was", () => {
      const draw = (pen: SKRSContext2D) => {
        across(pen);
        line(pen, [120, 100], [160, 180]);
      };
      expect(netAt(answered(draw), LEFT, 6)?.runs).toHaveLength(3);
      const found = answered(draw, stray([160, 180]));
      expect(netAt(found, [150, 160], 6)).toBeNull();
      expect(isOne(found, LEFT, RIGHT)).toBe(true);
      expect(netAt(found, LEFT, 6)?.runs.map(({ points }) => points.length)).toEqual([2]);
      expect(found.questions).toEqual([]);
    });

    test("one that crosses a line goes on both sides of it", () => {
      const draw = (pen: SKRSContext2D) => {
        across(pen);
        down(pen);
      };
      const found = answered(draw, stray([121, 60]));
      expect(netAt(found, TOP, 6)).toBeNull();
      expect(netAt(found, BOTTOM, 6)).toBeNull();
      expect(isOne(found, LEFT, RIGHT)).toBe(true);
    });

    test("one with a hole that was passed goes on both sides of it", () => {
      const draw = (pen: SKRSContext2D) => {
        across(pen);
        line(pen, [120, 100], [160, 180]);
        hole(pen, [140, 140], 4);
      };
      expect(netAt(answered(draw), LEFT, 6)?.runs).toHaveLength(3);
      const found = answered(draw, stray([160, 180]));
      expect(netAt(found, [130, 120], 6)).toBeNull();
      expect(netAt(found, [152, 164], 6)).toBeNull();
      expect(netAt(found, LEFT, 6)?.runs.map(({ points }) => points.length)).toEqual([2]);
    });

    test("a stretch between two joints goes alone; each other stretch stays", () => {
      const draw = (pen: SKRSContext2D) => {
        across(pen);
        line(pen, [30, 160], [210, 160]);
        line(pen, [120, 100], [120, 160]);
      };
      expect(isOne(answered(draw), LEFT, [60, 160])).toBe(true);
      const found = answered(draw, stray([120, 130]));
      expect(isOne(found, LEFT, RIGHT)).toBe(true);
      expect(isOne(found, [60, 160], [200, 160])).toBe(true);
      expect(isOne(found, LEFT, [60, 160])).toBe(false);
    });

    test("said where no line is, it changes nothing", () => {
      const draw = (pen: SKRSContext2D) => {
        across(pen);
        down(pen);
      };
      expect(answered(draw, stray([60, 40]))).toEqual(answered(draw));
    });
  });

  test("two ends far apart are joined where the user says so", () => {
    const draw = (pen: SKRSContext2D) => {
      across(pen);
      hole(pen, [120, 100], 60);
    };
    expect(isOne(answered(draw), LEFT, RIGHT)).toBe(false);
    expect(isOne(answered(draw, { at: [118, 100], joined: true }), LEFT, RIGHT)).toBe(true);
  });
});
