import { add, type Point, scale, turn } from "../../base/index.ts";
import type { Part, PartKindName, PinId } from "../../job/index.ts";
import { alternator } from "./alternator.ts";
import { battery } from "./battery.ts";
import { converter } from "./converter.ts";
import { diode } from "./diode.ts";
import type { Failure } from "./failures.ts";
import { ground } from "./ground.ts";
import { inline } from "./inline.ts";
import type { Element, PartKind, PinPlace, Stroke, Terminal } from "./kind.ts";
import { lamp } from "./lamp.ts";
import { moduleKind } from "./module.ts";
import { offpage } from "./offpage.ts";
import { potentiometer } from "./potentiometer.ts";
import { breaker, fuse } from "./protection.ts";
import { relay } from "./relay.ts";
import { resistor } from "./resistor.ts";
import { sender } from "./sender.ts";
import { sensor } from "./sensor.ts";
import { solenoid } from "./solenoid.ts";
import { splice } from "./splice.ts";
import { switchKind } from "./switch.ts";
import { DEFAULT_UNIT } from "./unit.ts";
import { heater, horn, motor } from "./winding.ts";

export { doesWork } from "./does-work.ts";
export {
  type ElementFate,
  EXTRA_OHMS,
  type Failure,
  type JointFailure,
  type JointFate,
  LEAK_OHMS,
  TERMINAL_FAILURES,
  WIRE_FAILURES,
} from "./failures.ts";
export type * from "./kind.ts";
export { moduleSize } from "./module.ts";
export { COPPER, type Spread } from "./spread.ts";
export { steadyAmps } from "./steady-amps.ts";
export { restPosition, springPositions } from "./switch.ts";
export { DEFAULT_UNIT } from "./unit.ts";

// biome-ignore lint/suspicious/noExplicitAny: a kind is looked up by the very part it is for
type AnyKind = PartKind<any>;

/** Every kind of part, in the order in which a palette shows them. */
export const KINDS: Readonly<Record<PartKindName, AnyKind>> = {
  battery,
  ground,
  fuse,
  breaker,
  switch: switchKind,
  relay,
  module: moduleKind,
  lamp,
  solenoid,
  motor,
  heater,
  horn,
  resistor,
  diode,
  sender,
  potentiometer,
  sensor,
  alternator,
  converter,
  splice,
  inline,
  offpage,
};

export const kindOf = (kind: PartKindName): AnyKind => KINDS[kind];

export const pinsOf = (part: Part): readonly PinPlace[] => kindOf(part.kind).pins(part);

export const elementsOf = (part: Part, systemVoltage: number): readonly Element[] =>
  kindOf(part.kind).elements(part, systemVoltage);

export const terminalOf = (part: Part, pin: PinId): Terminal | null =>
  kindOf(part.kind).terminal?.(part, pin) ?? null;

/** Every way in which this very part can fail, as far as it has what fails. */
export const failuresOf = (part: Part): readonly Failure[] =>
  kindOf(part.kind).failures.filter(
    (failure: Failure) =>
      typeof failure.in === "string" ||
      // which laws a part has does not hang on the voltage
      elementsOf(part, 12).some(({ law }) => failure.in.includes(law.is)),
  );

export const strokesOf = (part: Part): readonly Stroke[] => kindOf(part.kind).draw(part);

/** From symbol units of `part` to pixels of its sheet. */
export function toSheet(part: Part, at: Point): Point {
  return add(part.at, turn(scale(at, part.unit ?? DEFAULT_UNIT), part.turn));
}

/** Where a pin lies on its sheet, pixels; null when the part has no such pin. */
export function pinPosition(part: Part, pin: PinId): Point | null {
  const place = pinsOf(part).find((candidate) => candidate.id === pin);
  return place ? toSheet(part, place.at) : null;
}
