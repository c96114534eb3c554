import type { PartKind } from "./kind.ts";
import { line } from "./strokes.ts";

export const ground: PartKind<"ground"> = {
  kind: "ground",
  title: "ground",
  letter: "X",
  defaults: () => ({}),
  pins: () => [{ id: "1", at: [0, 0] }],
  elements: () => [],
  terminal: (_part, pin) => (pin === "1" ? "chassis" : null),
  failures: [
    { mode: "open", in: "every-pin", strikes: "one", becomes: "open" },
    { mode: "high-resistance", in: "every-pin", strikes: "one", becomes: "extra-ohms" },
  ],
  draw: () => [
    line([0, 0], [0, 1.2]),
    line([-1.5, 1.2], [1.5, 1.2]),
    line([-1, 1.8], [1, 1.8]),
    line([-0.5, 2.4], [0.5, 2.4]),
  ],
};
