import { defineRule } from "../rule.ts";
import { readingName } from "../words.ts";

export const readingNotValid = defineRule({
  id: "reading-not-valid",
  severity: "warning",
  about: "reading",
  find: ({ reading, judged }) =>
    judged.verdict !== "invalid"
      ? []
      : [
          {
            subjects: [reading.id, reading.red, reading.black],
            message: `${readingName(reading)} proves nothing: ${judged.invalid ?? "the method is wrong here."}`,
          },
        ],
});
