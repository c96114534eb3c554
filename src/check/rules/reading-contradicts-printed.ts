import { presenceContradicts } from "../../readings/index.ts";
import { defineRule } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

export const readingContradictsPrinted = defineRule({
  id: "reading-contradicts-printed",
  severity: "contradiction",
  find: ({ job, machine, roles, readings }) =>
    readings.flatMap(({ reading, judged }) => {
      if (judged.verdict === "invalid") return [];
      return roles.flatMap((role) => {
        const { cavity, printedRole } = role;
        if (cavity === null || printedRole === null || printedRole === "unrecognised") return [];
        if (reading.red !== cavity && reading.black !== cavity) return [];
        const why = presenceContradicts(job, machine.id, reading, printedRole, cavity);
        if (why === null) return [];
        const shown = valueInWords(reading.quantity, reading.value);
        return [
          {
            subjects: [reading.id, role.pin, cavity],
            message: `${readingName(reading)} shows ${shown}. ${why} The diagram's word there is ${role.printed}.`,
            because: role.because,
          },
        ];
      });
    }),
});
