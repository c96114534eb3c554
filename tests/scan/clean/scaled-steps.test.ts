import { expect, test } from "vitest";
import { scaledSteps } from "../../../src/scan/clean/scaled-steps.ts";
import { USUAL_STEPS } from "../../../src/scan/clean/step.ts";

test("windows stay odd and specks stay at least a pixel, whatever the size of the look", () => {
  const steps = [USUAL_STEPS.flatten, USUAL_STEPS["black-and-white"], USUAL_STEPS.specks];
  expect(scaledSteps(steps, 1)).toEqual(steps);
  expect(scaledSteps(steps, 0.25)).toEqual([
    { does: "flatten" },
    { does: "black-and-white", window: 11, k: 0.25 },
    { does: "specks", largest: 1 },
  ]);
  expect(scaledSteps(steps, 0.01)[1]).toMatchObject({ window: 3 });
});
