import { standingRole } from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import { defineRule } from "../rule.ts";

export const printedRoleContradicted = defineRule({
  id: "printed-role-contradicted",
  severity: "contradiction",
  about: "module",
  find: ({ roles }) =>
    roles
      .filter((role) => role.verdict === "contradicted" && standingRole(role) === null)
      .map((role) => ({
        subjects: role.cavity === null ? [role.pin] : [role.pin, role.cavity],
        message: role.sentence,
        because: role.because,
        corrections: roleToAdopt(role),
      })),
});
