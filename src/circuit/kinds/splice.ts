import type { PartKind } from "./kind.ts";
import { dot } from "./strokes.ts";

export const splice: PartKind<"splice"> = {
  kind: "splice",
  title: "splice",
  letter: "X",
  defaults: () => ({}),
  pins: () => [{ id: "1", at: [0, 0] }],
  elements: () => [],
  failures: [
    { mode: "open", in: "every-pin", strikes: "one", becomes: "open" },
    { mode: "high-resistance", in: "every-pin", strikes: "one", becomes: "extra-ohms" },
  ],
  draw: () => [dot([0, 0], 0.4)],
};
