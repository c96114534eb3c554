import { useSelected } from "../../../session-context.tsx";

/** Whether the sheet at hand has a picture to work on. */
export const useHasPicture = (): boolean =>
  useSelected((state) =>
    state.job.diagram.sheets.some((one) => one.id === state.sheet && one.image !== undefined),
  );
