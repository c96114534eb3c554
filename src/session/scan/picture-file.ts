import type { SessionState } from "../state.ts";

/** The file of the picture of the sheet at hand; null where there is none to work on. */
export const pictureFileOf = ({ job, sheet }: Pick<SessionState, "job" | "sheet">): string | null =>
  job.diagram.sheets.find(({ id }) => id === sheet)?.image?.file ?? null;
