import type { PartKind } from "./kind.ts";
import { filled, line } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

export const diode: PartKind<"diode"> = {
  kind: "diode",
  title: "diode",
  letter: "R",
  defaults: () => ({}),
  pins: twoPins("A", "K"),
  elements: (part) => [{ part: part.id, a: "A", b: "K", law: { is: "diode" } }],
  failures: [
    { mode: "open", in: "every-element", strikes: "one", becomes: "open" },
    { mode: "shorted", in: "every-element", strikes: "one", becomes: "joined" },
    { mode: "leaky", in: "every-element", strikes: "one", becomes: "leak" },
  ],
  draw: () => [...leads(1), filled([-1, -1.1], [-1, 1.1], [1, 0]), line([1, -1.1], [1, 1.1])],
};
