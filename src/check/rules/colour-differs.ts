import { compareColours, formatColour, nameColour } from "../../standards/index.ts";
import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const colourDiffers = defineRule({
  id: "colour-differs",
  severity: "warning",
  about: "machine-wire",
  find: ({ cavity, pin, here, drawn, machineName }) => {
    const { colour } = here;
    const coloured = drawn.filter((wire) => wire.colour);
    const printed = coloured.flatMap((wire) => wire.colour ?? []);
    if (!colour || printed.length === 0) return [];
    const likeness = printed.map((one) => compareColours(one, colour));
    if (likeness.includes("same")) return [];
    const onDiagram = [...new Set(printed.map(formatColour))].join(" or ");
    const where = capital(cavityName(cavity));
    return [
      {
        subjects: [cavity, pin],
        message: likeness.includes("turned")
          ? `${where} has a ${formatColour(colour)} wire on ${machineName}, ${nameColour(
              colour,
            )}; the diagram says ${onDiagram}. Only the order differs, and letters joined on a diagram need not say which is the base: it may be the same wire. See which colour is the tracer.`
          : `${where} has a ${formatColour(colour)} wire on ${machineName}; the diagram says ${onDiagram}.`,
        ...provedBy(drawn.map(({ id }) => id)),
        corrections: coloured.map(({ id }) => ({ does: "take-colour", wire: id, colour })),
      },
    ];
  },
});
