import fc from "fast-check";
import { describe, expect, test } from "vitest";
import "../../support/seed.ts";
import type { Point } from "../../../src/base/index.ts";
import {
  cleanFormOf,
  setStep,
  stepsOf,
  switched,
} from "../../../src/editor/scan-desk/square/clean-form.ts";
import {
  croppedTo,
  levelled,
  mirrored,
  turned,
  uncutSize,
  withCorner,
  withMargin,
} from "../../../src/editor/scan-desk/square/square-work.ts";
import {
  type CleanStep,
  NOT_SQUARED,
  planOf,
  type Squaring,
  toPicture,
  USUAL_STEPS,
} from "../../../src/scan/index.ts";

const PHOTO = { width: 400, height: 300 };
const CUT: Squaring = { ...NOT_SQUARED, crop: { left: 20, top: 30, right: 219, bottom: 129 } };

/** Where in the photo the four corners of a result lie, clockwise from its top left. */
function spotsOf(squaring: Squaring): Point[] {
  const plan = planOf(squaring, PHOTO);
  if (!plan) throw new Error("no page");
  const [right, bottom] = [plan.width - 1, plan.height - 1];
  return (
    [
      [0, 0],
      [right, 0],
      [right, bottom],
      [0, bottom],
    ] as Point[]
  ).map((at) => toPicture(plan, at).map(Math.round) as unknown as Point);
}

describe("what is kept of a page stays the same piece of the photo", () => {
  const CORNERS: Point[] = [
    [20, 30],
    [219, 30],
    [219, 129],
    [20, 129],
  ];

  test("when it is turned right or left: only which corner comes first changes", () => {
    const [a, b, c, d] = CORNERS;
    expect(spotsOf(CUT)).toEqual([a, b, c, d]);
    expect(spotsOf(turned(CUT, 1, PHOTO))).toEqual([d, a, b, c]);
    expect(spotsOf(turned(CUT, -1, PHOTO))).toEqual([b, c, d, a]);
  });

  test("when it is mirrored, and turned as the user sees it after that", () => {
    const [a, b, c, d] = CORNERS;
    const flipped = mirrored(CUT, PHOTO);
    expect(spotsOf(flipped)).toEqual([b, a, d, c]);
    expect(spotsOf(turned(flipped, 1, PHOTO))).toEqual([c, b, a, d]);
  });

  test("when more is shown beyond the corners", () => {
    expect(spotsOf(withMargin(CUT, 15))).toEqual(CORNERS);
  });

  test("after any turns and mirrorings that undo one another", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("right", "left", "mirror")), (acts) => {
        const back = { right: "left", left: "right", mirror: "mirror" } as const;
        const all = [...acts, ...acts.toReversed().map((act) => back[act])];
        const end = all.reduce(
          (now, act) =>
            act === "mirror" ? mirrored(now, PHOTO) : turned(now, act === "right" ? 1 : -1, PHOTO),
          CUT,
        );
        expect(end).toEqual(CUT);
      }),
    );
  });
});

test("a corner stays on the photo, and what was kept keeps its proportion", () => {
  const moved = withCorner(CUT, 2, [9999, 149.5], PHOTO);
  expect(moved.corners?.[2]).toEqual([399, 149.5]);
  const [was, is] = [uncutSize(CUT, PHOTO), uncutSize(moved, PHOTO)];
  expect((moved.crop?.right ?? 0) / (is?.width ?? 1)).toBeCloseTo(219 / (was?.width ?? 1), 2);
});

test("a box dragged either way is kept, a slip is not, and the whole is no box", () => {
  expect(croppedTo(NOT_SQUARED, [200, 150], [50, 20], PHOTO).crop).toEqual({
    left: 50,
    top: 20,
    right: 200,
    bottom: 150,
  });
  expect(croppedTo(CUT, [50, 50], [53, 90], PHOTO)).toBe(CUT);
  expect(croppedTo(CUT, [-30, -5], [700, 900], PHOTO).crop).toBeNull();
});

test("a page is levelled as it is seen: mirrored, the other way", () => {
  expect(levelled(NOT_SQUARED, 2).level).toBe(2);
  expect(levelled({ ...NOT_SQUARED, isMirrored: true }, 2).level).toBe(-2);
  expect(levelled({ ...NOT_SQUARED, level: 40 }, 20).level).toBe(45);
});

test("steps are taken in one order, and one left out remembers how it was set", () => {
  const steps: readonly CleanStep[] = [{ does: "specks", largest: 9 }, USUAL_STEPS.flatten];
  const form = cleanFormOf(steps);
  expect(stepsOf(form)).toEqual([USUAL_STEPS.flatten, { does: "specks", largest: 9 }]);
  const off = switched(form, "specks", false);
  expect(stepsOf(off)).toEqual([USUAL_STEPS.flatten]);
  expect(stepsOf(switched(off, "specks", true))).toEqual(stepsOf(form));
  const inks = setStep(switched(off, "inks", true), { does: "inks", keep: ["red"] });
  expect(stepsOf(inks)).toEqual([USUAL_STEPS.flatten, { does: "inks", keep: ["red"] }]);
});
