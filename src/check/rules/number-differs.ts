import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

const plain = (number: string) => number.trim().toUpperCase();

export const numberDiffers = defineRule({
  id: "number-differs",
  severity: "warning",
  about: "machine-wire",
  find: ({ cavity, pin, here, drawn, machineName }) => {
    const number = here.number ?? "";
    const numbered = drawn.filter((wire) => wire.number);
    const printed = numbered.flatMap((wire) => wire.number ?? []);
    if (plain(number) === "" || printed.length === 0) return [];
    if (printed.some((one) => plain(one) === plain(number))) return [];
    return [
      {
        subjects: [cavity, pin],
        message: `${capital(cavityName(cavity))} has a wire numbered ${number} on ${
          machineName
        }; the diagram says ${[...new Set(printed)].join(" or ")}. Numbers identify better than colours: trace it.`,
        ...provedBy(drawn.map(({ id }) => id)),
        corrections: numbered.map(({ id }) => ({ does: "take-number", wire: id, number })),
      },
    ];
  },
});
