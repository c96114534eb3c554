import type { Part, PartKindName, PinId } from "./types.ts";

const TWO: readonly PinId[] = ["1", "2"];

/** Pins of the kinds whose pins never vary. */
const FIXED: Readonly<Partial<Record<PartKindName, readonly PinId[]>>> = {
  battery: ["+", "-"],
  ground: ["1"],
  fuse: TWO,
  breaker: TWO,
  lamp: TWO,
  motor: TWO,
  heater: TWO,
  resistor: TWO,
  horn: TWO,
  sender: TWO,
  potentiometer: ["1", "2", "W"],
  sensor: ["+", "-", "S"],
  alternator: ["B+", "D+", "E"],
  converter: ["in+", "in-", "out+", "out-"],
  diode: ["A", "K"],
  splice: ["1"],
  offpage: ["1"],
};

/** Contact pins of a relay's nth pole, counted from 0: `30 87 87a`, then `30b 87b 87ab` ... */
function polePins(pole: number): readonly PinId[] {
  const letter = pole === 0 ? "" : String.fromCharCode("a".charCodeAt(0) + pole);
  return [`30${letter}`, `87${letter}`, `87a${letter}`];
}

/** How many poles a relay must have for it to have this pin; null when no relay has it. */
export function polesForPin(pin: PinId): number | null {
  if (pin === "85" || pin === "86") return 1;
  for (let pole = 0; pole < 8; pole++) if (polePins(pole).includes(pin)) return pole + 1;
  return null;
}

/**
 * The pins that a part has by its kind and its own fields: what a reference may name. Where they
 * sit in the symbol is told in `circuit/kinds`, which has the same pins.
 */
export function pinIdsOf(part: Part): readonly PinId[] {
  switch (part.kind) {
    case "switch":
      return [...new Set(part.contacts.flatMap((contact) => contact.between))];
    case "relay":
      return [
        "85",
        "86",
        ...Array.from({ length: part.poles ?? 1 }, (_, pole) => polePins(pole)).flat(),
      ];
    case "solenoid":
      return part.ohmsPull !== undefined || part.ohmsHold !== undefined ? ["P", "H", "E"] : TWO;
    case "module":
    case "inline":
      return part.pins.map((pin) => pin.id);
    default:
      return FIXED[part.kind] ?? [];
  }
}
