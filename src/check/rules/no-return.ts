import { loadReaches } from "../load-ends.ts";
import { defineRule } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

export const noReturn = defineRule({
  id: "no-return",
  severity: "warning",
  find: ({ explorer }) =>
    loadReaches(explorer)
      .filter((reach) => !reach.hasReturn)
      .map(({ part }) => ({
        subjects: [part.id],
        message: `${capital(nameOf(part))} has no way back to ground. Trace its return, or mark where it goes on.`,
      })),
});
