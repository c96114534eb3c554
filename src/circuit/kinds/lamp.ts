import type { PartOf } from "../../job/index.ts";
import { LOAD_FAILURES } from "./failures.ts";
import type { PartKind, Stroke } from "./kind.ts";
import { ANY, FILAMENT, spreadOf } from "./spread.ts";
import { circle, filled, line } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

/** A stop or work lamp bulb (common practice, no source). */
const DEFAULT_WATTS = 21;
const DEFAULT_LED_WATTS = 5;
/** The common rule; a published 100 W bulb is 1/15. */
const COLD_SHARE = 0.1;
/** Share of nominal volts that an LED lamp's junctions take; its resistor takes the rest (from memory). */
const LED_SHARE = 0.6;

const wattsOf = (part: PartOf<"lamp">): number =>
  part.watts ?? (part.led ? DEFAULT_LED_WATTS : DEFAULT_WATTS);

function draw(part: PartOf<"lamp">): readonly Stroke[] {
  if (part.led) {
    return [
      ...leads(1),
      filled([-1, -1], [-1, 1], [1, 0]),
      line([1, -1], [1, 1]),
      line([-0.2, -1.3], [0.6, -2.3]),
      line([0.6, -1.3], [1.4, -2.3]),
    ];
  }
  const diagonal = 1.6 * Math.SQRT1_2;
  return [
    ...leads(1.6),
    circle([0, 0], 1.6),
    line([-diagonal, -diagonal], [diagonal, diagonal]),
    line([-diagonal, diagonal], [diagonal, -diagonal]),
  ];
}

export const lamp: PartKind<"lamp"> = {
  kind: "lamp",
  title: "lamp",
  letter: "P",
  defaults: () => ({ watts: DEFAULT_WATTS }),
  pins: twoPins("1", "2"),
  elements: (part, systemVoltage) => {
    const ohms = systemVoltage ** 2 / wattsOf(part);
    return [
      {
        part: part.id,
        a: "1",
        b: "2",
        law: part.led
          ? {
              is: "led",
              ohms: ohms * (1 - LED_SHARE),
              volts: systemVoltage * LED_SHARE,
              ...(part.watts === undefined ? { unsaid: ANY.led } : {}),
            }
          : {
              is: "load",
              ohms,
              coldOhms: ohms * COLD_SHARE,
              ...spreadOf(part.watts, FILAMENT, ANY.lamp),
              cathode: null,
            },
      },
    ];
  },
  failures: LOAD_FAILURES,
  draw,
};
