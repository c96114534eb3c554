import type { PartKind } from "./kind.ts";
import { dot } from "./strokes.ts";

export const splice: PartKind<"splice"> = {
  kind: "splice",
  title: "splice",
  letter: "X",
  defaults: () => ({}),
  pins: () => [{ id: "1", at: [0, 0] }],
  elements: () => [],
  faults: ["open", "high-resistance"],
  draw: () => [dot([0, 0], 0.4)],
};
