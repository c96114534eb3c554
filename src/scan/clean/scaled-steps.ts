import type { CleanStep } from "./step.ts";

/**
 * The steps as they must be set for a picture so many times as large, so that a look at a screen's
 * size shows about what the whole picture will be.
 */
export const scaledSteps = (steps: readonly CleanStep[], times: number): readonly CleanStep[] =>
  steps.map((step) => {
    if (step.does === "black-and-white") {
      return { ...step, window: 2 * Math.max(1, Math.round((step.window * times) / 2 - 0.5)) + 1 };
    }
    return step.does === "specks"
      ? { ...step, largest: Math.max(1, Math.round(step.largest * times)) }
      : step;
  });
