import { useSyncExternalStore } from "react";
import {
  type WordDesk,
  type WordItem,
  type WordState,
  wordDeskOf,
} from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";

/** The desk of printed words; null where there is no reader of print. */
export const useWordDesk = (): WordDesk | null => wordDeskOf(useSession());

/** What the desk of printed words shows now. */
export function useWords(desk: WordDesk): {
  readonly state: WordState;
  readonly items: readonly WordItem[];
  readonly current: WordItem | null;
} {
  const state = useSyncExternalStore(desk.subscribe, desk.get);
  // What words can be written to changes with the drawing, the sheet and the machine.
  useSelected(({ job }) => job);
  useSelected(({ sheet }) => sheet);
  useSelected(({ machine }) => machine);
  return { state, items: desk.items(), current: desk.current() };
}
