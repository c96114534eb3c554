import { defineRule } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

export const readingUnexpected = defineRule({
  id: "reading-unexpected",
  severity: "warning",
  about: "reading",
  find: ({ reading, judged }) => {
    if (judged.verdict !== "outside") return [];
    const expected =
      judged.predicted === null ? "nothing firm" : valueInWords(reading.quantity, judged.predicted);
    const band =
      judged.low === null || judged.high === null
        ? ""
        : ` (${valueInWords(reading.quantity, judged.low)} to ${valueInWords(reading.quantity, judged.high)})`;
    return [
      {
        subjects: [reading.id, reading.red, reading.black],
        message: `${readingName(reading)}: the meter shows ${valueInWords(reading.quantity, reading.value)}, a healthy machine shows ${expected}${band}. Something between these two points differs from the drawing: look for a fault there.`,
      },
    ];
  },
});
