import { pinRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";

export const pinWithoutCavity = defineRule({
  id: "pin-without-cavity",
  severity: "warning",
  find: ({ job, modules, network }) => {
    const linked = new Set(job.links.map((link) => link.pin));
    return modules
      .filter((module) => module.pins.some((pin) => linked.has(pinRef(module.id, pin.id))))
      .flatMap((module) =>
        module.pins
          .filter((pin) => {
            const ref = pinRef(module.id, pin.id);
            const matters = pin.printed !== undefined || (network.hops.get(ref)?.length ?? 0) > 0;
            return matters && !linked.has(ref);
          })
          .map((pin) => ({
            subjects: [pinRef(module.id, pin.id)],
            message: `Pin ${pinRef(module.id, pin.id)}${
              pin.printed ? ` (${pin.printed})` : ""
            } is tied to no cavity. Match it, or check that the plug has all its cavities.`,
          })),
      );
  },
});
