import { kindOf } from "../circuit/index.ts";
import { type CavityRef, type Part, type Probe, type Reading, splitRef } from "../job/index.ts";
import type { Role } from "../roles/index.ts";

/** "Cavity X1:4 (pin A1:4)", or the pin alone where it has no cavity. */
export const placeOf = (role: Role): string =>
  role.cavity === null ? `Pin ${role.pin}` : `Cavity ${role.cavity} (pin ${role.pin})`;

export const nameOf = (part: Part): string =>
  `${kindOf(part.kind).title} ${part.id}${part.label ? ` (${part.label})` : ""}`;

export { capital } from "../roles/index.ts";

export const cavityName = (cavity: CavityRef): string => {
  const { owner, name } = splitRef(cavity);
  return `cavity ${name} of plug ${owner}`;
};

const UNITS = { volts: "V", drop: "V", ohms: "Ω", amps: "A" } as const;

export function valueInWords(quantity: Reading["quantity"], value: number | "OL"): string {
  if (value === "OL") return "OL";
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = value.toFixed(digits);
  // The minus of a printed number; -0.00 is just 0.00.
  const signed = Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−");
  return `${signed} ${UNITS[quantity]}`;
}

const NAMES = { volts: "Volts", drop: "Voltage drop", ohms: "Ohms", amps: "Amps" } as const;

const probeName = (probe: Probe) => probe;

export const readingName = (reading: Pick<Reading, "quantity" | "red" | "black">): string =>
  `${NAMES[reading.quantity]} from ${probeName(reading.red)} to ${probeName(reading.black)}`;
