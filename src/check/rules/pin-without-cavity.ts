import { pinRef } from "../../job/index.ts";
import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";

export const pinWithoutCavity = defineRule({
  id: "pin-without-cavity",
  severity: "warning",
  about: "module",
  find: ({ module, roles, wired, tied }) => {
    if (!tied.includes(true)) return [];
    return module.pins
      .map((pin, index) => ({ pin, index }))
      .filter(
        ({ pin, index }) =>
          !tied[index] &&
          (wired[index] || (pin.printed !== undefined && roles[index]?.printedRole !== "unused")),
      )
      .map(({ pin, index }) => ({
        subjects: [pinRef(module.id, pin.id)],
        message: `Pin ${pinRef(module.id, pin.id)}${
          pin.printed ? ` (${pin.printed})` : ""
        } is tied to no cavity. Match it, or check that the plug has all its cavities.`,
        ...provedBy(roles[index]?.because ?? []),
      }));
  },
});
