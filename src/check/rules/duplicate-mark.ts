import { cavityRef } from "../../job/index.ts";
import { defineRule } from "../rule.ts";

export const duplicateMark = defineRule({
  id: "duplicate-mark",
  severity: "contradiction",
  about: "plug",
  find: ({ plug }) => {
    const counts = new Map<string, number>();
    for (const { mark } of plug.cavities) counts.set(mark, (counts.get(mark) ?? 0) + 1);
    return [...counts]
      .filter(([, count]) => count > 1)
      .map(([mark, count]) => ({
        subjects: [cavityRef(plug.id, mark)],
        message: `Plug ${plug.id} has ${count} cavities marked ${mark}. Read the marks again and correct one.`,
      }));
  },
});
