import type { PartKind } from "./kind.ts";
import { line, text } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

/** Volts at rest, fully charged, for each nominal volt: 12.6 V for 12, 25.2 V for 24 (TM 5-2420-230-24-1). */
export const REST_VOLTS_PER_NOMINAL = 1.05;

/** Internal ohms of a starter battery in good order (common practice, no source). */
const INTERNAL_OHMS = 0.01;

export const battery: PartKind<"battery"> = {
  kind: "battery",
  title: "battery",
  letter: "G",
  defaults: (systemVoltage) => ({
    volts: Math.round(systemVoltage * REST_VOLTS_PER_NOMINAL * 100) / 100,
    ohms: INTERNAL_OHMS,
  }),
  pins: twoPins("+", "-"),
  elements: (part, systemVoltage) => [
    {
      part: part.id,
      a: "+",
      b: "-",
      law: {
        is: "source",
        volts: part.volts ?? systemVoltage * REST_VOLTS_PER_NOMINAL,
        ohms: part.ohms ?? INTERNAL_OHMS,
        live: "always",
      },
    },
  ],
  terminal: (_part, pin) => (pin === "+" ? "battery-plus" : pin === "-" ? "battery-minus" : null),
  failures: [
    { mode: "open", in: "every-element", strikes: "one", becomes: "open" },
    { mode: "high-resistance", in: "every-element", strikes: "one", becomes: "extra-ohms" },
  ],
  draw: () => [
    ...leads(1),
    // long plate positive, short plate negative, two cells
    line([-1, -1.6], [-1, 1.6]),
    line([-0.35, -0.8], [-0.35, 0.8]),
    line([0.35, -1.6], [0.35, 1.6]),
    line([1, -0.8], [1, 0.8]),
    text([-2, -1.2], "+", 1.4),
  ],
};
