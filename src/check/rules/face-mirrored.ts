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
      `you look at the ${view.plug.side === "mating" ? "wire" : "mating"} side, or the face was drawn from it. Read a mark moulded in the plug: where the face is drawn rightly move what was noted, where it is not turn it over.`,
      (moves) => [
        { does: "move-notes", plug: view.plug.id, moves },
        { does: "flip-face", plug: view.plug.id, moves },
      ],
    ),
});
