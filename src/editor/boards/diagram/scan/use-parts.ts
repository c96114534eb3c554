import { useSyncExternalStore } from "react";
import {
  type PartItem,
  type PartsDesk,
  type PartsState,
  partsDeskOf,
} from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";

/** The desk of proposed parts; null where pictures can't be worked on. */
export const usePartsDesk = (): PartsDesk | null => partsDeskOf(useSession());

/** What the desk of proposed parts shows now. */
export function useParts(desk: PartsDesk): {
  readonly state: PartsState;
  readonly items: readonly PartItem[];
  readonly joints: readonly PartItem[];
} {
  const state = useSyncExternalStore(desk.subscribe, desk.get);
  // What is placed, on the sheet and the machine at hand, is proposed no more.
  useSelected(({ job }) => job);
  useSelected(({ sheet }) => sheet);
  useSelected(({ machine }) => machine);
  return { state, items: desk.items(), joints: desk.joints() };
}
