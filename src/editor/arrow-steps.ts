import type { Point } from "../base/index.ts";

/** The way that each arrow key leads, one step long; y down. */
export const ARROW_STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
