import { splitRef } from "../../job/index.ts";
import { isUntraced, rolesInWords, settlingReading, standingRole } from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import { defineRule } from "../rule.ts";
import { placeOf } from "../words.ts";

/** Past this many possible roles the list says less than "not traced". */
const MOST_NAMED = 4;

export const roleUndecided = defineRule({
  id: "role-undecided",
  severity: "note",
  about: "module",
  find: ({ module, roles }) => {
    const open = roles.filter((role) => role.fits.length > 1 && standingRole(role) === null);
    // One note for the module says what one a pin would only repeat.
    if (open.some(isUntraced)) {
      const message = `No wire is traced at module ${module.label ?? module.id} yet: what its pins are is open. Trace its wires.`;
      // A reading may have settled some pin all the same.
      return [{ subjects: [module.id], message, corrections: open.flatMap(roleToAdopt) }];
    }
    return open.map((role) => {
      const at = role.cavity === null ? `pin ${role.pin}` : `cavity ${role.cavity}`;
      const settling = settlingReading(role.fits, at, splitRef(role.pin).owner);
      const what =
        role.fits.length > MOST_NAMED
          ? "can be almost anything: the line is not traced to its end"
          : `can be ${rolesInWords(role.fits)}`;
      return {
        subjects: role.cavity === null ? [role.pin] : [role.pin, role.cavity],
        message: `${placeOf(role)} ${what}. ${
          settling ? `What settles it: ${settling}.` : "Trace the line further to settle it."
        }`,
        because: role.because,
        corrections: roleToAdopt(role),
      };
    });
  },
});
