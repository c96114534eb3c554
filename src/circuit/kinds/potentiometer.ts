import type { PartKind } from "./kind.ts";
import { ANY } from "./spread.ts";
import { box, filled, line } from "./strokes.ts";
import { leads } from "./two-pin.ts";

/** The usual track of a pedal or joystick (common practice, no source). */
const USUAL_OHMS = 5000;

export const potentiometer: PartKind<"potentiometer"> = {
  kind: "potentiometer",
  title: "potentiometer",
  letter: "R",
  defaults: () => ({ ohms: USUAL_OHMS }),
  pins: () => [
    { id: "1", at: [-3, 0] },
    { id: "2", at: [3, 0] },
    { id: "W", at: [0, 3] },
  ],
  elements: (part) => {
    const ohms = part.ohms ?? USUAL_OHMS;
    const unsaid = part.ohms === undefined ? { unsaid: ANY.track } : {};
    return [
      { part: part.id, a: "1", b: "2", law: { is: "track", ohms, ...unsaid } },
      { part: part.id, a: "W", b: "1", law: { is: "wiper", ohms, ...unsaid } },
      { part: part.id, a: "W", b: "2", law: { is: "wiper", ohms, ...unsaid } },
    ];
  },
  // the track on one side of the wiper; a wiper that lifts is the open terminal W
  failures: [
    { mode: "open", in: ["wiper"], strikes: "one", becomes: "open" },
    { mode: "shorted", in: ["wiper"], strikes: "one", becomes: "joined" },
    { mode: "high-resistance", in: ["wiper"], strikes: "one", becomes: "extra-ohms" },
  ],
  draw: () => [
    ...leads(2),
    box([-2, -0.8], [2, 0.8]),
    line([0, 3], [0, 1.6]),
    filled([0, 0.8], [-0.5, 1.7], [0.5, 1.7]),
  ],
};
