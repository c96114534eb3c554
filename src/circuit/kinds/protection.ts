import type { Id } from "../../job/index.ts";
import type { Element, FaultMode, PartKind, Stroke } from "./kind.ts";
import { arc, box, dot, line } from "./strokes.ts";
import { leads, REACH, twoPins } from "./two-pin.ts";

/** The size fitted where nobody says (common practice, no source). */
const DEFAULT_AMPS = 10;

function protection<K extends "fuse" | "breaker">(
  kind: K,
  letter: string,
  faults: readonly FaultMode[],
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
    faults,
    draw: (): readonly Stroke[] => strokes,
  };
}

export const fuse: PartKind<"fuse"> = protection(
  "fuse",
  "F",
  ["open", "high-resistance"],
  [box([-2, -0.8], [2, 0.8]), line([-REACH, 0], [REACH, 0])],
);

export const breaker: PartKind<"breaker"> = protection(
  "breaker",
  "Q",
  ["open", "high-resistance", "stuck-closed"],
  [...leads(1.6), arc([0, 0.6], 1.7, 200, 340), dot([-1.6, 0]), dot([1.6, 0])],
);
