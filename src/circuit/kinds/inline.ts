import type { PartKind } from "./kind.ts";
import { arc, dashed, filled } from "./strokes.ts";

const ROW = 2;

/** A plug and its socket in the run of the loom: wires come to each pin from both sides. */
export const inline: PartKind<"inline"> = {
  kind: "inline",
  title: "inline plug",
  letter: "X",
  defaults: () => ({ pins: [{ id: "1" }, { id: "2" }] }),
  pins: (part) =>
    part.pins.map(({ id }, index) => ({
      id,
      at: [0, index * ROW - ((part.pins.length - 1) * ROW) / 2],
    })),
  elements: () => [],
  // not pushed home, or full of water: all its pins; a single pin is a terminal's failure
  failures: [
    { mode: "open", in: "every-pin", strikes: "all", becomes: "open" },
    { mode: "high-resistance", in: "every-pin", strikes: "all", becomes: "extra-ohms" },
    { mode: "bridged", in: "every-pin", strikes: "one", becomes: "to-neighbour" },
  ],
  draw: (part) => {
    const reach = ((part.pins.length - 1) * ROW) / 2;
    return [
      ...part.pins.flatMap((_, index) => {
        const y = index * ROW - reach;
        return [
          arc([0, y], 0.8, 90, 270),
          filled([-0.5, y - 0.25], [1, y - 0.25], [1, y + 0.25], [-0.5, y + 0.25]),
        ];
      }),
      ...(part.pins.length > 1 ? [dashed([0, -reach], [0, reach])] : []),
    ];
  },
};
