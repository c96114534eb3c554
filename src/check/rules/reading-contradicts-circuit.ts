import type { Reading } from "../../job/index.ts";
import type { Explanation } from "../../readings/index.ts";
import { expectedInWords } from "../expected-words.ts";
import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

export const readingContradictsCircuit = defineRule({
  id: "reading-contradicts-circuit",
  severity: "contradiction",
  about: "reading",
  find: ({ reading, judged, explained, along }) =>
    explained?.verdict !== "contradicts"
      ? []
      : [
          {
            subjects: [reading.id, reading.red, reading.black],
            message: `${readingName(reading)}: the meter shows ${valueInWords(reading.quantity, reading.value)}, ${expectedInWords(reading, judged)}, and no single fault ${limit(reading, explained)}. The drawing or the reading is wrong. ${settle(reading, explained)}`,
            ...provedBy(along),
          },
        ],
});

/** How far a single fault could take the reading, end of "no single fault ...". */
function limit({ quantity, value }: Reading, { reach }: Explanation): string {
  if (reach === null || value === "OL") return "gives that";
  const isAbove = value > reach.high;
  const most = isAbove ? reach.high : reach.low;
  return `takes it ${isAbove ? "above" : "below"} ${valueInWords(quantity, most)}`;
}

/** What settles it: the reading again, and a look at the wires. */
function settle({ red, black, quantity }: Reading, { isReversed }: Explanation): string {
  const again = isReversed
    ? `It is what a healthy machine shows with the two leads exchanged: read again with red on ${red} and black on ${black}.`
    : `Read again with the meter proved on the battery first, its range set to ${quantity === "amps" ? "DC amps" : "DC volts"}, red on ${red} and black on ${black}.`;
  return `${again} If it shows the same, look at the wires in those two places, and at the posts of the battery, and hold them against the drawing.`;
}
