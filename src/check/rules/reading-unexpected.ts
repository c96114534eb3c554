import type { Explanation } from "../../readings/index.ts";
import { expectedInWords } from "../expected-words.ts";
import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";
import { capital, readingName, valueInWords } from "../words.ts";

/** Faults that are named, at most. */
const MOST_NAMED = 3;

export const readingUnexpected = defineRule({
  id: "reading-unexpected",
  severity: "warning",
  about: "reading",
  find: ({ reading, judged, explained, along }) => {
    if (judged.verdict !== "outside" || explained?.verdict === "contradicts") return [];
    return [
      {
        subjects: [reading.id, reading.red, reading.black],
        message: `${readingName(reading)}: the meter shows ${valueInWords(reading.quantity, reading.value)}, ${expectedInWords(reading, judged)}. ${explained ? cause(explained) : ELSEWHERE}`,
        ...provedBy(along),
      },
    ];
  },
});

const ELSEWHERE =
  "Something between these two points differs from the drawing: look for a fault there.";

/** What to look for first. */
function cause({ spots, isReversed }: Explanation): string {
  const leads = isReversed
    ? "It is what a healthy machine shows with the two leads exchanged: read again first. "
    : "";
  const named = spots
    .slice(0, MOST_NAMED)
    .map(({ words, blows }) =>
      blows.length === 0 ? words : `${words}, which blows ${blows.join(" and ")}`,
    );
  if (named.length === 0)
    return `${leads}No single fault that was tried gives just this: read again with the probes on bare metal, then ${ELSEWHERE.charAt(0).toLowerCase()}${ELSEWHERE.slice(1)}`;
  const [only, second] = named;
  return second === undefined
    ? `${leads}${capital(only ?? "")} would do it.`
    : `${leads}What would do it, likeliest first: ${named.join("; ")}.`;
}
