import { acrossModules } from "../rearranged/across-modules.ts";
import { rearrangementOf } from "../rearranged/rearrangement.ts";
import { toldAcross, toldOf } from "../rearranged/told.ts";
import { defineRule } from "../rule.ts";

export const printedRolesRearranged = defineRule({
  id: "printed-roles-rearranged",
  severity: "warning",
  about: "misprinted",
  find: ({ module, all }) => {
    const own = rearrangementOf(module);
    if (own) return [toldOf(module, own)];
    const across = acrossModules(module, all);
    // the first of the two tells it
    const isFirst = across !== null && all.indexOf(module) < all.indexOf(across.other);
    return isFirst ? [toldAcross(module, across)] : [];
  },
});
