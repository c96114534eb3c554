import { cavityRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const cavityEmpty = defineRule({
  id: "cavity-empty",
  severity: "warning",
  about: "plug",
  find: ({ plug, pins, bare }) =>
    plug.cavities.flatMap((cavity, index) => {
      const pin = pins[index] ?? null;
      if (pin === null || !(cavity.empty || cavity.blocked) || bare.includes(pin)) return [];
      const ref = cavityRef(plug.id, cavity.mark);
      return [
        {
          subjects: [ref, pin],
          message: `${capital(cavityName(ref))} is ${
            cavity.blocked ? "blocked" : "empty"
          }, yet pin ${pin} is tied to it. Look into the plug: a terminal may have backed out.`,
          corrections: [
            { does: "mark-in-use", cavity: ref },
            { does: "remove-link", pin, cavity: ref },
          ],
        },
      ];
    }),
});
