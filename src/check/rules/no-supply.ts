import { loadReaches } from "../load-ends.ts";
import { defineRule } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

export const noSupply = defineRule({
  id: "no-supply",
  severity: "warning",
  find: ({ explorer }) =>
    loadReaches(explorer)
      .filter((reach) => !reach.canBeFed)
      .map(({ part }) => ({
        subjects: [part.id],
        message: `${capital(nameOf(part))} can be fed in no switch position. Trace its feed, or mark where it goes on.`,
      })),
});
