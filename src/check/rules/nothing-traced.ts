import { defineRule } from "../rule.ts";

/** One part alone has nothing to be joined to. */
const FEWEST = 2;

export const nothingTraced = defineRule({
  id: "nothing-traced",
  severity: "note",
  about: "untraced",
  find: ({ placed, chief }) =>
    placed < FEWEST
      ? []
      : [
          {
            subjects: chief,
            message: `${placed} parts are placed and no wire is drawn yet: trace the lines between them. On a sheet with a picture the scan desk follows them for you.`,
          },
        ],
});
