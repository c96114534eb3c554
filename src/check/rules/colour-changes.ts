import { ownerOf } from "../../job/index.ts";
import { compareColours, formatColour } from "../../standards/index.ts";
import { defineRule } from "../rule.ts";

export const colourChanges = defineRule({
  id: "colour-changes",
  severity: "note",
  about: "page-line",
  find: ({ ends: [here, there], wires: [leaving, goingOn] }) => {
    if (!leaving.colour || !goingOn.colour) return [];
    if (compareColours(leaving.colour, goingOn.colour) !== "different") return [];
    const [page, other] = [ownerOf(here), ownerOf(there)];
    return [
      {
        subjects: [here, there, leaving.id, goingOn.id],
        message: `The line that goes from page end ${page} to ${other} is ${formatColour(
          leaving.colour,
        )} on the one side (${leaving.id}) and ${formatColour(goingOn.colour)} on the other (${
          goingOn.id
        }), with no splice or plug drawn between. Either one label joins two different wires, or a joint or a colour is drawn wrong.`,
        because: [leaving.id, page, other, goingOn.id],
      },
    ];
  },
});
