import { ownerOf } from "../../job/index.ts";
import { defineRule } from "../rule.ts";

/** Named in the sentence; the subjects are all. */
const MOST_NAMED = 6;

export const unfusedSupply = defineRule({
  id: "unfused-supply",
  severity: "note",
  about: "unfused",
  find: ({ plus, fed }) => {
    const more = fed.length - MOST_NAMED;
    const named = fed.slice(0, MOST_NAMED).join(", ");
    return [
      {
        subjects: [plus, ...fed],
        message: `Battery ${ownerOf(plus)} feeds ${named}${
          more > 0 ? ` and ${more} more` : ""
        } over no fuse or breaker. Look for one on the machine: a short there has nothing to end it.`,
        because: [ownerOf(plus)],
      },
    ];
  },
});
