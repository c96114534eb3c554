import type { PartKind } from "./kind.ts";
import { circle, line, text } from "./strokes.ts";

/** Charging volts for each nominal volt: 14.2 V for 12, 28.4 V for 24 (common practice, no source). */
export const CHARGE_VOLTS_PER_NOMINAL = 14.2 / 12;
const INTERNAL_OHMS = 0.02;
/** The field winding through which the charge lamp finds its ground at standstill (from memory). */
const FIELD_OHMS = 10;
/** What holds D+ up when running: the three small field diodes (from memory). */
const FIELD_SOURCE_OHMS = 0.5;

export const alternator: PartKind<"alternator"> = {
  kind: "alternator",
  title: "alternator",
  letter: "G",
  defaults: () => ({ ohms: INTERNAL_OHMS }),
  pins: () => [
    { id: "B+", at: [-2, -3] },
    { id: "D+", at: [2, -3] },
    { id: "E", at: [0, 3] },
  ],
  elements: (part, systemVoltage) => {
    const volts = systemVoltage * CHARGE_VOLTS_PER_NOMINAL;
    return [
      {
        part: part.id,
        a: "B+",
        b: "E",
        law: {
          is: "source",
          volts,
          ohms: part.ohms ?? INTERNAL_OHMS,
          live: "engine-running",
        },
      },
      {
        part: part.id,
        a: "D+",
        b: "E",
        law: {
          is: "source",
          volts,
          ohms: FIELD_SOURCE_OHMS,
          restOhms: FIELD_OHMS,
          live: "engine-running",
        },
      },
    ];
  },
  terminal: (_part, pin) => (pin === "D+" ? "charge-signal" : null),
  failures: [
    { mode: "dead", in: "every-element", strikes: "all", becomes: "dead" },
    { mode: "open", in: "every-element", strikes: "one", becomes: "open" },
    { mode: "shorted", in: "every-element", strikes: "one", becomes: "joined" },
  ],
  draw: () => [
    circle([0, 0], 2),
    text([0, 0], "G", 1.8),
    line([-2, -3], [-2, -2], [-1.4, -1.4]),
    line([2, -3], [2, -2], [1.4, -1.4]),
    line([0, 2], [0, 3]),
  ],
};
