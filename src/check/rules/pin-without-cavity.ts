import { pinRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";

export const pinWithoutCavity = defineRule({
  id: "pin-without-cavity",
  severity: "warning",
  about: "module",
  find: ({ module, wired, tied }) => {
    if (!tied.includes(true)) return [];
    return module.pins
      .filter((pin, index) => !tied[index] && (pin.printed !== undefined || wired[index]))
      .map((pin) => ({
        subjects: [pinRef(module.id, pin.id)],
        message: `Pin ${pinRef(module.id, pin.id)}${
          pin.printed ? ` (${pin.printed})` : ""
        } is tied to no cavity. Match it, or check that the plug has all its cavities.`,
      }));
  },
});
