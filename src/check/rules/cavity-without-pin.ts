import { cavityRef, splitRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";
import { capital, cavityName } from "../words.ts";

export const cavityWithoutPin = defineRule({
  id: "cavity-without-pin",
  severity: "warning",
  find: ({ job }) => {
    const linked = new Set(job.links.map((link) => link.cavity));
    const plugsInUse = new Set(job.links.map((link) => splitRef(link.cavity).owner));
    return job.plugs
      .filter((plug) => plugsInUse.has(plug.id))
      .flatMap((plug) =>
        plug.cavities
          .filter((cavity) => !cavity.empty && !cavity.blocked)
          .map((cavity) => cavityRef(plug.id, cavity.mark))
          .filter((cavity) => !linked.has(cavity))
          .map((cavity) => ({
            subjects: [cavity],
            message: `${capital(cavityName(cavity))} is tied to no pin. Match it, or mark it empty.`,
          })),
      );
  },
});
