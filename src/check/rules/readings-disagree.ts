import { addTo } from "../../base/index.ts";
import type { Reading } from "../../job/index.ts";
import { provedBy } from "../proof.ts";
import { defineRule, type Found, type ReadingView } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

/** Two readings of one thing that differ by more than both are different (common practice, no source). */
const SHARE = 0.1;
const LEAST: Readonly<Record<Reading["quantity"], number>> = {
  volts: 0.5,
  drop: 0.1,
  ohms: 1,
  amps: 0.1,
};
/** Volts by which what a meter shows may wander where nothing is known to hold the point (from memory). */
const GHOST_VOLTS = 5;
/** From here up damp and fingers decide what an ohmmeter shows, OL included (from memory). */
const NO_WAY_OHMS = 1e6;

export const readingsDisagree = defineRule({
  id: "readings-disagree",
  severity: "warning",
  about: "readings",
  find: ({ readings }) => {
    const alike = new Map<string, ReadingView[]>();
    for (const one of readings) {
      if (one.judged.verdict !== "invalid") addTo(alike, one.thing.key, one);
    }
    const found: Found[] = [];
    for (const all of alike.values()) {
      const [first] = all;
      if (!first || !all.some((one) => all.some((other) => differ(one, other, first)))) continue;
      const inTime = [...all].sort(byTime);
      const [last = first] = inTime.slice(-1);
      const times = all.length === 2 ? "twice" : `${all.length} times`;
      const shown = inTime.map((one) => inWords(one, last));
      found.push({
        subjects: [
          ...inTime.map(({ reading }) => reading.id),
          last.reading.red,
          last.reading.black,
        ],
        message: `${readingName(last.reading)} was read ${times} with different results: ${shown.slice(0, -1).join(", ")} and ${shown.at(-1)}. Unless something was repaired or changed in between, something comes and goes: wiggle the loom and read again.`,
        ...provedBy(all.find(({ along }) => along.length > 0)?.along ?? []),
      });
    }
    return found;
  },
});

/** The earlier first, those without a time before them. */
const byTime = (a: ReadingView, b: ReadingView): number => timeOf(a) - timeOf(b) || 0;

const timeOf = ({ reading: { at = "" } }: ReadingView): number => {
  const time = Date.parse(at);
  return Number.isNaN(time) ? Number.NEGATIVE_INFINITY : time;
};

const inWords = (one: ReadingView, like: ReadingView) =>
  `${valueInWords(one.reading.quantity, valueLike(one, like))} (${one.reading.at ?? "no time noted"})`;

/** Leads exchanged, volts, drops and amps change their sign. */
function valueLike({ reading, thing }: ReadingView, like: ReadingView): number | "OL" {
  const { value } = reading;
  return value !== "OL" && thing.turned !== like.thing.turned ? -value : value;
}

function differ(one: ReadingView, two: ReadingView, like: ReadingView): boolean {
  const { quantity, with: instrument } = like.reading;
  // test lamps differ: what the one shows in series with a load is not what the next one shows
  if (instrument === "test-lamp" && isInside(one) && isInside(two)) return false;
  const [a, b] = [valueLike(one, like), valueLike(two, like)];
  if (quantity === "ohms" && isNoWay(a) && isNoWay(b)) return false;
  if (a === "OL" || b === "OL") return a !== b;
  const isVolts = quantity === "volts" || quantity === "drop";
  const least = isVolts && !isHeld(one) ? GHOST_VOLTS : LEAST[quantity];
  return Math.abs(a - b) > Math.max(least, SHARE * Math.max(Math.abs(a), Math.abs(b)));
}

const isInside = ({ judged }: ReadingView) => judged.verdict === "inside";

/** Of a point that nobody can predict, too, nobody knows that anything holds it. */
const isHeld = ({ judged }: ReadingView) => !judged.floating && judged.predicted !== null;

const isNoWay = (value: number | "OL") => value === "OL" || value >= NO_WAY_OHMS;
