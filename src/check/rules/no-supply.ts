import { defineRule } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

export const noSupply = defineRule({
  id: "no-supply",
  severity: "warning",
  about: "load",
  find: ({ part, canBeFed }) =>
    canBeFed
      ? []
      : [
          {
            subjects: [part.id],
            message: `${capital(nameOf(part))} can be fed in no switch position. Trace its feed, or mark where it goes on.`,
          },
        ],
});
