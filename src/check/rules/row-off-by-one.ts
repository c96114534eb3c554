import { toldOf } from "../mislaid/told.ts";
import { defineRule } from "../rule.ts";

export const rowOffByOne = defineRule({
  id: "row-off-by-one",
  severity: "contradiction",
  about: "mislaid",
  find: (view) =>
    toldOf(
      view,
      "shifted",
      "count the cavities again from a mark moulded in the plug, blocked ones too, and move what was noted to where it belongs.",
      (moves) => [{ does: "move-notes", plug: view.plug.id, moves }],
    ),
});
