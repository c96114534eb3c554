import { ROLE_IN_WORDS } from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import { provedBy } from "../proof.ts";
import { defineRule } from "../rule.ts";
import { placeOf } from "../words.ts";

export const adoptedRoleContradicted = defineRule({
  id: "adopted-role-contradicted",
  severity: "contradiction",
  about: "module",
  find: ({ roles }) =>
    roles.flatMap((role) => {
      const { adopted, pin, cavity } = role;
      if (adopted === undefined || role.fits.includes(adopted)) return [];
      return [
        {
          subjects: cavity === null ? [pin] : [pin, cavity],
          message: `${placeOf(role)} was adopted as ${ROLE_IN_WORDS[adopted]}, which the circuit does not allow. ${role.sentence} The sheet prints what the circuit says.`,
          ...provedBy(role.because),
          corrections: [...roleToAdopt(role), { does: "drop-role", pin }],
        },
      ];
    }),
});
