import { cavityRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const cavityEmpty = defineRule({
  id: "cavity-empty",
  severity: "warning",
  find: ({ job }) => {
    const pinAt = new Map(job.links.map((link) => [link.cavity, link.pin]));
    return job.plugs.flatMap((plug) =>
      plug.cavities.flatMap((cavity) => {
        const ref = cavityRef(plug.id, cavity.mark);
        const pin = pinAt.get(ref);
        if (pin === undefined || !(cavity.empty || cavity.blocked)) return [];
        return [
          {
            subjects: [ref, pin],
            message: `${capital(cavityName(ref))} is ${
              cavity.blocked ? "blocked" : "empty"
            }, yet pin ${pin} is tied to it. Look into the plug: a terminal may have backed out.`,
          },
        ];
      }),
    );
  },
});
