import { toldOf } from "../mislaid/told.ts";
import { defineRule } from "../rule.ts";

export const cavitiesSwapped = defineRule({
  id: "cavities-swapped",
  severity: "contradiction",
  about: "mislaid",
  find: (view) => {
    if (view.mislaid === null) return [];
    const [{ hypothesis, tally }] = view.mislaid.explained;
    const { mishap } = hypothesis;
    if (mishap.is !== "exchanged") return [];
    const { a, b } = mishap;
    const { id: plug } = view.plug;
    return tally.inTheLoom
      ? toldOf(
          view,
          "exchanged",
          "with the module plugged in it gets each wire at the other's pin: exchange the two wires in the plug, or draw them as they are on this machine.",
          () => [],
        )
      : toldOf(
          view,
          "exchanged",
          "look at the two wires and the marks beside them: then exchange what is tied to the two cavities, or the wires in the plug, or move what was noted at the wrong one.",
          (moves) => [
            { does: "exchange-cavities", plug, a, b },
            { does: "move-notes", plug, moves },
          ],
        );
  },
});
