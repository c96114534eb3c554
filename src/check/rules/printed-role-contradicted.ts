import { standingRole } from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import type { Correction } from "../correction.ts";
import { defineRule } from "../rule.ts";

export const printedRoleContradicted = defineRule({
  id: "printed-role-contradicted",
  severity: "contradiction",
  about: "module",
  find: ({ roles, wired }) =>
    roles.flatMap((role, index) => {
      if (role.verdict !== "contradicted" || standingRole(role) !== null) return [];
      // Its wire may just not be drawn yet.
      const goesOn: readonly Correction[] = wired[index]
        ? []
        : [{ does: "mark-as-going-on", pins: [role.pin] }];
      return {
        subjects: role.cavity === null ? [role.pin] : [role.pin, role.cavity],
        message: role.sentence,
        because: role.because,
        corrections: [...goesOn, ...roleToAdopt(role)],
      };
    }),
});
