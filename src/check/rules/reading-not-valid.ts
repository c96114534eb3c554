import { defineRule } from "../rule.ts";
import { readingName } from "../words.ts";

export const readingNotValid = defineRule({
  id: "reading-not-valid",
  severity: "warning",
  find: ({ readings }) =>
    readings
      .filter(({ judged }) => judged.verdict === "invalid")
      .map(({ reading, judged }) => ({
        subjects: [reading.id, reading.red, reading.black],
        message: `${readingName(reading)} proves nothing: ${judged.invalid ?? "the method is wrong here."}`,
      })),
});
