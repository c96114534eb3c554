import type { PartOf } from "../../job/index.ts";
import { GROUNDED_WINDING, LOAD_FAILURES } from "./failures.ts";
import type { Element, PartKind, Stroke } from "./kind.ts";
import { ANY, COPPER, spreadOf } from "./spread.ts";
import { box, filled, line, text } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

/** A hydraulic or fuel valve coil draws about 20 W (common practice, no source). */
const USUAL_WATTS = 20;
const usualOhms = (systemVoltage: number) =>
  Math.round((systemVoltage ** 2 / USUAL_WATTS) * 10) / 10;

/** A pull winding far below, a hold winding far above (common practice, no source). */
const USUAL_PULL_SHARE = 0.05;
const USUAL_HOLD_SHARE = 2;

/** Either value says that there are two windings: P and H, with their common end at E. */
export const hasTwoWindings = (part: PartOf<"solenoid">): boolean =>
  part.ohmsPull !== undefined || part.ohmsHold !== undefined;

function elements(part: PartOf<"solenoid">, systemVoltage: number): readonly Element[] {
  const winding = (
    a: string,
    b: string,
    given: number | undefined,
    usual: number,
    brief = false,
  ): Element => {
    const ohms = given ?? usual;
    return {
      part: part.id,
      a,
      b,
      law: {
        is: "load",
        ohms,
        coldOhms: ohms,
        ...spreadOf(given, COPPER, ANY.solenoid),
        cathode: part.diode ? "a" : null,
        ...(brief ? { brief } : {}),
      },
    };
  };
  const usual = usualOhms(systemVoltage);
  return hasTwoWindings(part)
    ? [
        winding("P", "E", part.ohmsPull, usual * USUAL_PULL_SHARE, true),
        winding("H", "E", part.ohmsHold, usual * USUAL_HOLD_SHARE),
      ]
    : [winding("1", "2", part.ohms, usual)];
}

const ends = twoPins("1", "2");

/** Across the coil, its bar at pin 1. */
const suppression: readonly Stroke[] = [
  line([-2.4, 0], [-2.4, -2.2], [2.4, -2.2], [2.4, 0]),
  filled([0.6, -2.8], [0.6, -1.6], [-0.6, -2.2]),
  line([-0.6, -2.8], [-0.6, -1.6]),
];

/** The same across either of two windings, outside of them; `side` -1 above, 1 below. */
const suppressionBeside = (side: -1 | 1): readonly Stroke[] => {
  const y = side * 3.2;
  return [
    line([-2.2, side * 1.5], [-2.2, y], [2.2, y], [2.2, side * 1.5]),
    filled([0.6, y - 0.5], [0.6, y + 0.5], [-0.6, y]),
    line([-0.6, y - 0.5], [-0.6, y + 0.5]),
  ];
};

function draw(part: PartOf<"solenoid">): readonly Stroke[] {
  if (hasTwoWindings(part)) {
    return [
      box([-1.4, -2.4], [1.4, -0.6]),
      box([-1.4, 0.6], [1.4, 2.4]),
      line([-3, -1.5], [-1.4, -1.5]),
      line([-3, 1.5], [-1.4, 1.5]),
      line([1.4, -1.5], [2.2, -1.5], [2.2, 1.5], [1.4, 1.5]),
      line([2.2, 0], [3, 0]),
      text([0, -1.5], "P", 1.2),
      text([0, 1.5], "H", 1.2),
      ...(part.diode ? [...suppressionBeside(-1), ...suppressionBeside(1)] : []),
    ];
  }
  return [
    ...leads(1.4),
    box([-1.4, -1.2], [1.4, 1.2]),
    line([-1.4, 1.2], [1.4, -1.2]),
    ...(part.diode ? suppression : []),
  ];
}

export const solenoid: PartKind<"solenoid"> = {
  kind: "solenoid",
  title: "solenoid",
  letter: "M",
  defaults: (systemVoltage) => ({ ohms: usualOhms(systemVoltage) }),
  pins: (part) =>
    hasTwoWindings(part)
      ? [
          { id: "P", at: [-3, -1.5] },
          { id: "H", at: [-3, 1.5] },
          { id: "E", at: [3, 0] },
        ]
      : ends(),
  elements,
  failures: [...LOAD_FAILURES, GROUNDED_WINDING],
  draw,
};
