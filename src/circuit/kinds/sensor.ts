import type { PartOf } from "../../job/index.ts";
import type { PartKind } from "./kind.ts";
import { box, line, outline, text } from "./strokes.ts";

/** What its signal is, as written in the symbol: `PNP`, `NPN`, or how far a voltage reaches. */
function signalWords({ output, volts }: PartOf<"sensor">): string {
  const reach = volts === undefined ? "" : `${volts} V`;
  if (output === "analog") return reach === "" ? "V" : `0–${reach}`;
  return [output?.toUpperCase(), reach].filter(Boolean).join(" ");
}

/** An active sensor: what its signal is depends on what it senses, so it declares no elements. */
export const sensor: PartKind<"sensor"> = {
  kind: "sensor",
  title: "sensor",
  letter: "B",
  defaults: () => ({ output: "pnp" as const }),
  pins: () => [
    { id: "+", at: [3, -2] },
    { id: "S", at: [3, 0] },
    { id: "-", at: [3, 2] },
  ],
  elements: () => [],
  terminal: (_part, pin) =>
    pin === "+"
      ? "sensor-plus"
      : pin === "-"
        ? "sensor-minus"
        : pin === "S"
          ? "sensor-signal"
          : null,
  // nothing inside it is declared: dead, it does no more than one that was taken off
  failures: [{ mode: "dead", in: "every-pin", strikes: "all", becomes: "open" }],
  draw: (part) => [
    box([-3, -3], [2, 3]),
    outline([-0.5, -1.2], [0.9, 0], [-0.5, 1.2], [-1.9, 0]),
    text([-0.5, 2.2], signalWords(part), 1),
    line([2, -2], [3, -2]),
    line([2, 0], [3, 0]),
    line([2, 2], [3, 2]),
    text([1.4, -2], "+", 1.2),
    text([1.4, 2], "−", 1.2),
  ],
};
