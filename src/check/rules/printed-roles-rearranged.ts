import { isOpen } from "../../roles/index.ts";
import { type AcrossModules, acrossModules } from "../rearranged/across-modules.ts";
import { type Rearrangement, rearrangementOf } from "../rearranged/rearrangement.ts";
import { toldAcross, toldOf } from "../rearranged/told.ts";
import type { Place } from "../rearranged/word-column.ts";
import { defineRule } from "../rule.ts";

export const printedRolesRearranged = defineRule({
  id: "printed-roles-rearranged",
  severity: "warning",
  about: "misprinted",
  find: ({ module, all }) => {
    const own = rearrangementOf(module);
    if (own) return fillsOpenPlace(own) ? [] : [toldOf(module, own)];
    const across = acrossModules(module, all);
    // the first of the two tells it
    const isFirst = across !== null && all.indexOf(module) < all.indexOf(across.other);
    return isFirst && !fillsOpenPlace(across) ? [toldAcross(module, across)] : [];
  },
});

/**
 * While a module's lines are still being traced, nearly every word fits at a pin of which next to nothing
 * is known: that one does says nothing.
 */
function fillsOpenPlace(found: Rearrangement | AcrossModules): boolean {
  const isToCome = ({ module, role }: Place) => module.untraced === true && isOpen(role);
  if (found.is !== "tied") return found.moves.some(({ to }) => isToCome(to));
  return found.column.some(
    (place, index) =>
      isToCome(place) && found.choices[index]?.some((choice) => choice !== place.text),
  );
}
