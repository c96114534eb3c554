import { defineRule } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

export const noReturn = defineRule({
  id: "no-return",
  severity: "warning",
  about: "load",
  find: ({ part, hasReturn }) =>
    hasReturn
      ? []
      : [
          {
            subjects: [part.id],
            message: `${capital(nameOf(part))} has no way back to ground. Trace its return, or mark where it goes on.`,
          },
        ],
});
