import { formatColour } from "../../standards/index.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const colourDiffers = defineRule({
  id: "colour-differs",
  severity: "warning",
  about: "machine-wire",
  find: ({ cavity, pin, here, drawn, machineName }) => {
    const { colour } = here;
    const printed = drawn.flatMap((wire) => (wire.colour ? [wire.colour] : []));
    if (!colour || printed.length === 0) return [];
    const same = printed.some(
      (one) => one.base === colour.base && (one.tracer ?? null) === (colour.tracer ?? null),
    );
    if (same) return [];
    const onDiagram = [...new Set(printed.map(formatColour))].join(" or ");
    return [
      {
        subjects: [cavity, pin],
        message: `${capital(cavityName(cavity))} has a ${formatColour(colour)} wire on ${
          machineName
        }; the diagram says ${onDiagram}.`,
      },
    ];
  },
});
