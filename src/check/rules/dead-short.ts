import { ownerOf } from "../../job/index.ts";
import { defineRule } from "../rule.ts";

export const deadShort = defineRule({
  id: "dead-short",
  severity: "contradiction",
  about: "short",
  find: ({ plus, ground, condition, through, path }) => [
    {
      subjects: [plus, ground],
      message: `With ${condition}, battery ${ownerOf(plus)} reaches ground at ${ground} with no load on the way${
        through.length > 0 ? ` (through ${through.join(", ")})` : ""
      }. Check the tracing before anything is switched on.`,
      because: [ownerOf(plus), ...path],
    },
  ],
});
