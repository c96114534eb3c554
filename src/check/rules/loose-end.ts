import { elementsOf, pinsOf } from "../../circuit/index.ts";
import { ownerOf, type Part, type PinRef, pinRef } from "../../job/index.ts";
import { defineRule, type Found, type PartView } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

const ADVICE = "Go on tracing it, or mark that it goes on and is not traced.";

export const looseEnd = defineRule({
  id: "loose-end",
  severity: "warning",
  about: "part",
  find: looseEndsOf,
});

function looseEndsOf(view: PartView): readonly Found[] {
  const { part, wires: wiresAt, isBegun, systemVoltage } = view;
  // Before the first wire that is true of every part, and says nothing of any.
  if (!isBegun) return [];
  const wires = (pin: PinRef) => wiresAt.get(pin) ?? 0;
  const pins = pinsOf(part).map((pin) => pinRef(part.id, pin.id));
  // A module's or plug's free pins are normal; a pass-through that a wire enters must let it out.
  if (part.kind === "module") return [];
  if (part.kind === "splice" || part.kind === "inline") {
    return pins
      .filter((pin) => wires(pin) === 1 || (part.kind === "splice" && wires(pin) === 0))
      .map((pin) => ({ ...endsAt(pin, part), ...(wires(pin) === 1 ? goesOn([pin]) : {}) }));
  }
  if (pins.every((pin) => wires(pin) === 0)) {
    return [
      {
        subjects: [part.id],
        message: `${capital(nameOf(part))} is wired to nothing. ${ADVICE}`,
        ...(mayGoOn(part, pins) ? goesOn(pins) : {}),
      },
    ];
  }
  return pins
    .filter((pin) => wires(pin) === 0 && mustBeWired(part, pin, wires, systemVoltage))
    .map((pin) => ({
      subjects: [pin, part.id],
      message: `Pin ${pin} of ${nameOf(part)} is wired to nothing. ${ADVICE}`,
      ...goesOn([pin]),
    }));
}

const goesOn = (pins: readonly PinRef[]): Pick<Found, "corrections"> => ({
  corrections: [{ does: "mark-as-going-on", pins }],
});

/** What all of chassis hangs on must not become an untraced end, and a relay's every pin is no help. */
const mayGoOn = (part: Part, pins: readonly PinRef[]): boolean =>
  part.kind !== "ground" && part.kind !== "offpage" && pins.length <= 2;

const endsAt = (pin: PinRef, part: Part): Found => ({
  subjects: [ownerOf(pin), pin],
  message: `A line ends at ${nameOf(part)}${part.kind === "inline" ? `, pin ${pin}` : ""}. ${ADVICE}`,
});

/** Free throws, wipers and case-grounded pins are no loose ends; half a contact is. */
function mustBeWired(
  part: Part,
  pin: PinRef,
  wires: (pin: PinRef) => number,
  systemVoltage: number,
): boolean {
  switch (part.kind) {
    case "switch":
    case "relay": {
      const coil = part.kind === "relay" && (pin.endsWith(":85") || pin.endsWith(":86"));
      if (coil) return true;
      const contacts = elementsOf(part, systemVoltage)
        .filter((element) => element.law.is !== "coil")
        .map((element) => [pinRef(part.id, element.a), pinRef(part.id, element.b)] as const);
      const touching = contacts.filter((ends) => ends.includes(pin));
      const halfWired = touching.some((ends) => ends.some((end) => wires(end) > 0));
      // The far ends of a throw that is used elsewhere are free throws.
      const usedElsewhere = touching.some((ends) =>
        contacts.some(
          (other) =>
            other.some((end) => ends.includes(end)) && other.every((end) => wires(end) > 0),
        ),
      );
      return halfWired && !usedElsewhere;
    }
    case "potentiometer":
      return pinsOf(part).filter((one) => wires(pinRef(part.id, one.id)) > 0).length < 2;
    case "sensor":
      return pin.endsWith(":S");
    case "alternator":
      return pin.endsWith(":B+");
    case "converter":
      return pin.endsWith("+");
    default:
      return true;
  }
}
