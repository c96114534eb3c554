import type { Point } from "../../base/index.ts";
import type { PartOf } from "../../job/index.ts";
import type { Element, Fed, PartKind, PinPlace } from "./kind.ts";
import { COPPER } from "./spread.ts";
import { box } from "./strokes.ts";
import { DEFAULT_UNIT } from "./unit.ts";

type Module = PartOf<"module">;

/** Room for a mark and a printed word at either edge, symbol units. */
const USUAL_WIDTH = 14;
const ROW = 3;
/** Share of nominal below which a module sleeps, where it does not say (common practice, no source). */
const LEAST_FEED = 0.6;

/** Width and height of the drawn box in symbol units; it lies about the module's `at`. */
export function moduleSize(part: Module): Point {
  const unit = part.unit ?? DEFAULT_UNIT;
  if (part.size) return [part.size[0] / unit, part.size[1] / unit];
  const spread = part.pins.filter((pin) => !pin.at).length;
  // pins that say where they sit are on the edge: the box reaches out to them
  const reach = (axis: 0 | 1) =>
    part.pins.reduce((most, pin) => Math.max(most, (2 * Math.abs(pin.at?.[axis] ?? 0)) / unit), 0);
  return [
    spread === 0 && reach(0) > 0 ? reach(0) : Math.max(USUAL_WIDTH, reach(0)),
    Math.max(2 * ROW, (Math.ceil(spread / 2) + 1) * ROW, reach(1)),
  ];
}

/** Pins without a place of their own: first half down the left edge, the rest down the right. */
function pins(part: Module): readonly PinPlace[] {
  const unit = part.unit ?? DEFAULT_UNIT;
  const [width, height] = moduleSize(part);
  const unplaced = part.pins.filter((pin) => !pin.at);
  const rows = Math.ceil(unplaced.length / 2);
  const right = unplaced.length - rows;
  return part.pins.map((pin): PinPlace => {
    if (pin.at) return { id: pin.id, at: [pin.at[0] / unit, pin.at[1] / unit] };
    const index = unplaced.indexOf(pin);
    const onLeft = index < rows;
    const row = onLeft ? index : index - rows;
    const inColumn = onLeft ? rows : right;
    return {
      id: pin.id,
      at: [onLeft ? -width / 2 : width / 2, height * ((row + 1) / (inColumn + 1) - 0.5)],
    };
  });
}

/** Any of its supplies with any of its grounds feeds it; null when nobody has said which they are. */
export function feedOf(part: Module, systemVoltage: number): Fed | null {
  const pairs = (part.power?.supply ?? []).flatMap((supply) =>
    (part.power?.ground ?? []).map((ground) => [supply, ground] as const),
  );
  const [first, ...rest] = pairs;
  if (!first) return null;
  return {
    fedBy: first,
    ...(rest.length > 0 ? { orBy: rest } : {}),
    minVolts: part.power?.minVolts ?? systemVoltage * LEAST_FEED,
  };
}

function elements(part: Module, systemVoltage: number): readonly Element[] {
  const feed = feedOf(part, systemVoltage);
  return [
    ...(part.sources ?? []).map(
      ({ between: [a, b], volts, ohms }): Element => ({
        part: part.id,
        a,
        b,
        law: { is: "source", volts, ohms, live: feed ?? "unknown" },
      }),
    ),
    ...(part.behaviour?.loads ?? []).map(
      ({ between: [a, b], ohms }): Element => ({
        part: part.id,
        a,
        b,
        law: { is: "load", ohms, coldOhms: ohms, spread: COPPER, cathode: null },
      }),
    ),
    ...(part.behaviour?.paths ?? []).map(
      ({ between: [a, b], input, active, does, seconds }): Element => ({
        part: part.id,
        a,
        b,
        law: {
          is: "module-path",
          does,
          input: input ?? null,
          active: active ?? "high",
          seconds: seconds ?? null,
          power: feed,
        },
      }),
    ),
  ];
}

export const moduleKind: PartKind<"module"> = {
  kind: "module",
  title: "module",
  letter: "A",
  // Whoever places one has its lines still to trace.
  defaults: () => ({ pins: [], untraced: true }),
  pins,
  elements,
  terminal: () => "module",
  failures: [
    { mode: "dead", in: "every-element", strikes: "all", becomes: "dead" },
    { mode: "stuck-open", in: ["module-path"], strikes: "one", becomes: "open" },
    { mode: "stuck-closed", in: ["module-path"], strikes: "one", becomes: "joined" },
  ],
  draw: (part) => {
    const [width, height] = moduleSize(part);
    // marks and printed words are the board's: they carry verdicts
    return [box([-width / 2, -height / 2], [width / 2, height / 2])];
  },
};
