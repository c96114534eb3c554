import type { Reading } from "../../job/index.ts";
import { defineRule, type Found } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

/** Two readings of one thing that differ by more than both are different (common practice, no source). */
const SHARE = 0.1;
const LEAST: Readonly<Record<Reading["quantity"], number>> = {
  volts: 0.5,
  drop: 0.1,
  ohms: 1,
  amps: 0.1,
};

export const readingsDisagree = defineRule({
  id: "readings-disagree",
  severity: "warning",
  about: "readings",
  find: ({ readings }) => {
    const found: Found[] = [];
    const firstOf = new Map<string, Reading>();
    for (const { reading, judged } of readings) {
      if (judged.verdict === "invalid") continue;
      const key = sameThing(reading);
      const first = firstOf.get(key);
      if (!first) {
        firstOf.set(key, reading);
        continue;
      }
      if (!differ(first, reading)) continue;
      found.push({
        subjects: [first.id, reading.id, reading.red, reading.black],
        message: `${readingName(reading)} was read twice with different results: ${shown(first, reading)} and ${shown(reading, reading)}. Wiggle the loom and read again: something comes and goes.`,
      });
    }
    return found;
  },
});

const shown = (reading: Reading, like: Reading) => {
  const value = valueInWords(reading.quantity, valueLike(reading, like));
  return `${value} (${reading.at ?? "no time noted"})`;
};

/** Probes exchanged, volts and drops change their sign and nothing else does. */
function valueLike(reading: Reading, like: Reading): number | "OL" {
  const turned = reading.red !== like.red;
  const signed =
    reading.quantity === "volts" || reading.quantity === "drop" || reading.quantity === "amps";
  return turned && signed && reading.value !== "OL" ? -reading.value : reading.value;
}

function sameThing({ quantity, red, black, when, with: tool }: Reading): string {
  const switches = Object.entries(when.switches ?? {}).sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([
    quantity,
    [red, black].sort(),
    switches,
    [...(when.unplugged ?? [])].sort(),
    [...(when.removed ?? [])].sort(),
    when.standIn ?? null,
    when.engine ?? "off",
    tool ?? "meter",
  ]);
}

function differ(a: Reading, b: Reading): boolean {
  const other = valueLike(a, b);
  if (other === "OL" || b.value === "OL") return other !== b.value;
  const allowed = Math.max(LEAST[b.quantity], SHARE * Math.max(Math.abs(other), Math.abs(b.value)));
  return Math.abs(other - b.value) > allowed;
}
