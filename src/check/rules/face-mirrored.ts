import { toldOf } from "../mislaid/told.ts";
import { defineRule } from "../rule.ts";

export const faceMirrored = defineRule({
  id: "face-mirrored",
  severity: "contradiction",
  about: "mislaid",
  find: (view) =>
    toldOf(
      view,
      "mirrored",
      `you look at the ${view.plug.side === "mating" ? "wire" : "mating"} side, or the face was drawn from it. Read a mark moulded in the plug, turn the face over where it is wrong, and enter what was read so far at the cavities where it belongs.`,
      [{ does: "flip-face", plug: view.plug.id }],
    ),
});
