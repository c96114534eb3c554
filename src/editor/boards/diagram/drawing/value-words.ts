import type { Part } from "../../../../job/index.ts";

/** Fields worth reading beside a symbol, with their unit, in the order in which they are tried. */
const VALUES: readonly (readonly [field: string, unit: string])[] = [
  ["amps", "A"],
  ["watts", "W"],
  ["volts", "V"],
  ["outVolts", "V"],
  ["ohms", "Ω"],
  ["coilOhms", "Ω"],
];

export function inUnit(value: number, unit: string): string {
  if (unit === "Ω" && value >= 1000) return `${Number((value / 1000).toPrecision(4))} kΩ`;
  return `${Number(value.toPrecision(4))} ${unit}`;
}

/** The value a mechanic looks for beside the symbol, e.g. "10 A"; empty when none is known. */
export function valueWords(part: Part): string {
  const fields = part as unknown as Readonly<Record<string, unknown>>;
  for (const [field, unit] of VALUES) {
    const value = fields[field];
    if (typeof value === "number") return inUnit(value, unit);
  }
  const { ohmsMin, ohmsMax } = fields;
  return typeof ohmsMin === "number" && typeof ohmsMax === "number"
    ? `${ohmsMin}–${inUnit(ohmsMax, "Ω")}`
    : "";
}
