import type { Id } from "../../job/index.ts";
import type { Failure } from "./failures.ts";
import type { Element, PartKind, Stroke } from "./kind.ts";
import { arc, box, dot, line } from "./strokes.ts";
import { leads, REACH, twoPins } from "./two-pin.ts";

/** The size fitted where nobody says (common practice, no source). */
const DEFAULT_AMPS = 10;

const BOTH: readonly Failure[] = [
  { mode: "open", in: "every-element", strikes: "one", becomes: "open" },
  { mode: "high-resistance", in: "every-element", strikes: "one", becomes: "extra-ohms" },
];

function protection<K extends "fuse" | "breaker">(
  kind: K,
  letter: string,
  failures: readonly Failure[],
  strokes: readonly Stroke[],
) {
  return {
    kind,
    title: kind,
    letter,
    defaults: () => ({ amps: DEFAULT_AMPS }),
    pins: twoPins("1", "2"),
    elements: (part: { id: Id; amps?: number }): readonly Element[] => [
      {
        part: part.id,
        a: "1",
        b: "2",
        law: { is: "protection", amps: part.amps ?? DEFAULT_AMPS },
      },
    ],
    failures,
    draw: (): readonly Stroke[] => strokes,
  };
}

export const fuse: PartKind<"fuse"> = protection("fuse", "F", BOTH, [
  box([-2, -0.8], [2, 0.8]),
  line([-REACH, 0], [REACH, 0]),
]);

export const breaker: PartKind<"breaker"> = protection(
  "breaker",
  "Q",
  [...BOTH, { mode: "stuck-closed", in: "every-element", strikes: "one", becomes: "joined" }],
  [...leads(1.6), arc([0, 0.6], 1.7, 200, 340), dot([-1.6, 0]), dot([1.6, 0])],
);
