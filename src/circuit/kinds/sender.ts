import { LOAD_FAILURES } from "./failures.ts";
import type { PartKind } from "./kind.ts";
import { box, line } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

/** The range of the usual fuel and pressure senders (common practice, no source). */
const USUAL_MIN = 10;
const USUAL_MAX = 180;
/** Any float, pressure or temperature sender, a cold thermistor among them (common practice, no source). */
const ANY_MIN = 0.5;
const ANY_MAX = 100_000;

export const sender: PartKind<"sender"> = {
  kind: "sender",
  title: "sender",
  letter: "B",
  defaults: () => ({ ohmsMin: USUAL_MIN, ohmsMax: USUAL_MAX }),
  pins: twoPins("1", "2"),
  elements: (part) => {
    const ohmsMin = part.ohmsMin ?? Math.min(USUAL_MIN, part.ohmsMax ?? USUAL_MIN);
    const ohmsMax = Math.max(ohmsMin, part.ohmsMax ?? USUAL_MAX);
    const { ohmsMin: least, ohmsMax: most } = part;
    const unsaid =
      least === undefined || most === undefined
        ? {
            unsaid: [
              Math.min(least ?? ANY_MIN, ohmsMin),
              Math.max(most ?? ANY_MAX, ohmsMax),
            ] as const,
          }
        : {};
    return [{ part: part.id, a: "1", b: "2", law: { is: "sender", ohmsMin, ohmsMax, ...unsaid } }];
  },
  failures: LOAD_FAILURES,
  draw: () => [
    ...leads(2),
    box([-2, -0.8], [2, 0.8]),
    // struck through: its value follows what it measures
    line([-1.8, 1.8], [1.6, -1.6], [2.4, -1.6]),
  ],
};
