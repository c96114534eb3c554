import { defineRule } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

export const readingContradictsPrinted = defineRule({
  id: "reading-contradicts-printed",
  severity: "contradiction",
  about: "reading",
  find: ({ reading, forbids }) =>
    forbids.map(({ role, why }) => ({
      subjects: [reading.id, role.pin, ...(role.cavity === null ? [] : [role.cavity])],
      message: `${readingName(reading)} shows ${valueInWords(reading.quantity, reading.value)}. ${why} The diagram's word there is ${role.printed}.`,
      because: role.because,
    })),
});
