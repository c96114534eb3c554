import { ROLE_IN_WORDS, type Role, standingRole } from "../../roles/index.ts";
import { roleToAdopt } from "../adopt-role.ts";
import { defineRule } from "../rule.ts";
import { readingName, valueInWords } from "../words.ts";

export const readingContradictsPrinted = defineRule({
  id: "reading-contradicts-printed",
  severity: "contradiction",
  about: "reading",
  find: ({ reading, forbids }) =>
    forbids.map(({ role, why }) => ({
      subjects: [reading.id, role.pin, ...(role.cavity === null ? [] : [role.cavity])],
      message: `${readingName(reading)} shows ${valueInWords(reading.quantity, reading.value)}. ${why} ${toldThere(role)}`,
      because: role.because,
      corrections:
        standingRole(role) === null ? roleToAdopt(role) : [{ does: "drop-role", pin: role.pin }],
    })),
});

/** What the reading is held against: the printed word, or what was adopted in its place. */
function toldThere(role: Role): string {
  const adopted = standingRole(role);
  return adopted === null
    ? `The diagram's word there is ${role.printed}.`
    : `The role adopted there is ${ROLE_IN_WORDS[adopted]}.`;
}
