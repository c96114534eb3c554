import type { PinId } from "../../job/index.ts";
import type { PinPlace, Stroke } from "./kind.ts";
import { line } from "./strokes.ts";

/** Half the length of a symbol with one pin at either end, symbol units. */
export const REACH = 3;

/** A pin at either end of a horizontal symbol, the first on the left. */
export const twoPins =
  (left: PinId, right: PinId): (() => readonly PinPlace[]) =>
  () => [
    { id: left, at: [-REACH, 0] },
    { id: right, at: [REACH, 0] },
  ];

/** The two leads from the pins to a body that begins `half` units from the middle. */
export const leads = (half: number): readonly Stroke[] => [
  line([-REACH, 0], [-half, 0]),
  line([half, 0], [REACH, 0]),
];
