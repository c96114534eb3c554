import { LOAD_FAILURES } from "./failures.ts";
import type { PartKind } from "./kind.ts";
import { ANY } from "./spread.ts";
import { box } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

const USUAL_OHMS = 1000;

export const resistor: PartKind<"resistor"> = {
  kind: "resistor",
  title: "resistor",
  letter: "R",
  defaults: () => ({ ohms: USUAL_OHMS }),
  pins: twoPins("1", "2"),
  elements: (part) => [
    {
      part: part.id,
      a: "1",
      b: "2",
      law: {
        is: "resistor",
        ohms: part.ohms ?? USUAL_OHMS,
        ...(part.ohms === undefined ? { unsaid: ANY.resistor } : {}),
      },
    },
  ],
  failures: LOAD_FAILURES,
  draw: () => [...leads(2), box([-2, -0.8], [2, 0.8])],
};
