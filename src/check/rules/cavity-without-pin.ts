import { cavityRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const cavityWithoutPin = defineRule({
  id: "cavity-without-pin",
  severity: "warning",
  about: "plug",
  find: ({ plug, pins, inUse }) =>
    plug.cavities
      .filter(({ empty, blocked }, index) => inUse && !empty && !blocked && pins[index] === null)
      .map(({ mark }) => cavityRef(plug.id, mark))
      .map((cavity) => ({
        subjects: [cavity],
        message: `${capital(cavityName(cavity))} is tied to no pin. Match it, or mark it empty.`,
        corrections: [{ does: "mark-empty", cavity }],
      })),
});
