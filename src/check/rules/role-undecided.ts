import { splitRef } from "../../job/index.ts";
import {
  isOpen,
  isUntraced,
  listAnd,
  type Role,
  rolesInWords,
  settlingReading,
  standingRole,
} from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import { defineRule } from "../rule.ts";
import { placeOf } from "../words.ts";

export const roleUndecided = defineRule({
  id: "role-undecided",
  severity: "note",
  about: "module",
  find: ({ module, roles }) => {
    const open = roles.filter((role) => role.fits.length > 1 && standingRole(role) === null);
    const bare = open.filter(isUntraced);
    const traced = open.filter((role) => !isUntraced(role)).map(undecidedPin);
    if (bare.length === 0) return traced;
    // One note for the module says what one a pin would only repeat.
    const named = module.label ?? module.id;
    const message =
      bare.length === module.pins.length
        ? `No wire is traced at module ${named} yet: what its pins are is open. Trace its wires.`
        : `No line is traced yet at ${pinsInWords(bare)} of module ${named}: what they are is open. Trace them, or say with the module that every line of it is traced.`;
    // A reading may have settled some pin all the same.
    return [{ subjects: [module.id], message, corrections: bare.flatMap(roleToAdopt) }, ...traced];
  },
});

const pinsInWords = (roles: readonly Role[]): string =>
  `${roles.length === 1 ? "pin" : "pins"} ${listAnd(roles.map(({ pin }) => splitRef(pin).name))}`;

function undecidedPin(role: Role) {
  const at = role.cavity === null ? `pin ${role.pin}` : `cavity ${role.cavity}`;
  const settling = settlingReading(role.fits, at, splitRef(role.pin).owner);
  const what = isOpen(role)
    ? "can be almost anything, as far as its line is traced and it is said what works the switches on it"
    : `can be ${rolesInWords(role.fits)}`;
  return {
    subjects: role.cavity === null ? [role.pin] : [role.pin, role.cavity],
    message: `${placeOf(role)} ${what}. ${
      settling ? `What settles it: ${settling}.` : "Trace the line further to settle it."
    }`,
    because: role.because,
    corrections: roleToAdopt(role),
  };
}
