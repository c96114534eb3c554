import type { Id } from "../../job/index.ts";
import { GROUNDED_WINDING, LOAD_FAILURES } from "./failures.ts";
import type { Element, PartKind, Stroke } from "./kind.ts";
import { ANY, COPPER, MOTOR, type Spread, spreadOf } from "./spread.ts";
import { arc, box, circle, line, text } from "./strokes.ts";
import { leads, twoPins } from "./two-pin.ts";

type Winding = "motor" | "heater" | "horn";

/** Two-pin loads whose only field is their ohms; `watts` gives the usual size of such a part. */
function load<K extends Winding>(
  kind: K,
  letter: string,
  watts: number,
  spread: Spread,
  strokes: readonly Stroke[],
  oftenUnfused?: PartKind<K>["oftenUnfused"],
) {
  const usualOhms = (systemVoltage: number) => Math.round((systemVoltage ** 2 / watts) * 10) / 10;
  return {
    kind,
    title: kind,
    letter,
    defaults: (systemVoltage: number) => ({ ohms: usualOhms(systemVoltage) }),
    pins: twoPins("1", "2"),
    elements: (part: { id: Id; ohms?: number }, systemVoltage: number): readonly Element[] => {
      const ohms = part.ohms ?? usualOhms(systemVoltage);
      return [
        {
          part: part.id,
          a: "1",
          b: "2",
          law: {
            is: "load",
            ohms,
            coldOhms: ohms,
            ...spreadOf(part.ohms, spread, ANY[kind]),
            cathode: null,
          },
        },
      ];
    },
    failures: [...LOAD_FAILURES, GROUNDED_WINDING],
    draw: () => strokes,
    ...(oftenUnfused ? { oftenUnfused } : {}),
  };
}

// usual sizes: a small pump or blower, a glow or seat heater, a disc horn; starters and glow plugs
// seldom have a fuse (common practice, no source)
export const motor: PartKind<"motor"> = load(
  "motor",
  "M",
  60,
  MOTOR,
  [...leads(1.8), circle([0, 0], 1.8), text([0, 0], "M", 1.8)],
  "behind-relay",
);

export const heater: PartKind<"heater"> = load(
  "heater",
  "E",
  100,
  COPPER,
  [
    ...leads(2),
    box([-2, -0.8], [2, 0.8]),
    line([-1, -0.8], [-1, 0.8]),
    line([0, -0.8], [0, 0.8]),
    line([1, -0.8], [1, 0.8]),
  ],
  "always",
);

export const horn: PartKind<"horn"> = load("horn", "P", 50, COPPER, [
  line([-3, 0], [-1.4, 0], [-1.4, -0.2]),
  line([3, 0], [1.4, 0], [1.4, -0.2]),
  arc([0, -0.2], 1.8, 180, 360),
  line([-1.8, -0.2], [1.8, -0.2]),
]);
