import type { PartKind } from "./kind.ts";
import { box, line, text } from "./strokes.ts";

/** From a 24 V system the usual converter makes 12 V; from any other the same nominal. */
const usualOut = (systemVoltage: number): number => (systemVoltage === 12 ? 24 : 12);
const OUTPUT_OHMS = 0.05;
/** Share of nominal below which it gives up (common practice, no source). */
const LEAST_INPUT = 0.7;

export const converter: PartKind<"converter"> = {
  kind: "converter",
  title: "voltage converter",
  letter: "T",
  defaults: (systemVoltage) => ({ outVolts: usualOut(systemVoltage) }),
  pins: () => [
    { id: "in+", at: [-4, -1.5] },
    { id: "in-", at: [-4, 1.5] },
    { id: "out+", at: [4, -1.5] },
    { id: "out-", at: [4, 1.5] },
  ],
  elements: (part, systemVoltage) => [
    {
      part: part.id,
      a: "out+",
      b: "out-",
      law: {
        is: "source",
        volts: part.outVolts ?? usualOut(systemVoltage),
        ohms: OUTPUT_OHMS,
        live: { fedBy: ["in+", "in-"], minVolts: systemVoltage * LEAST_INPUT },
        drawsUnsaid: true,
      },
    },
  ],
  failures: [
    { mode: "dead", in: "every-element", strikes: "all", becomes: "dead" },
    { mode: "shorted", in: "every-element", strikes: "one", becomes: "joined" },
  ],
  draw: () => [
    box([-3, -3], [3, 3]),
    line([-3, 3], [3, -3]),
    line([-4, -1.5], [-3, -1.5]),
    line([-4, 1.5], [-3, 1.5]),
    line([3, -1.5], [4, -1.5]),
    line([3, 1.5], [4, 1.5]),
    text([-1.6, -1.6], "=", 1.6),
    text([1.6, 1.6], "=", 1.6),
  ],
};
