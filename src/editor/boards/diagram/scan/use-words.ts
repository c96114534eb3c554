import { useSyncExternalStore } from "react";
import {
  type WordDesk,
  type WordItem,
  type WordState,
  wordDeskOf,
} from "../../../../session/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { useTrace } from "./use-trace.ts";

/** The desk of printed words; null where there is no reader of print. */
export const useWordDesk = (): WordDesk | null => wordDeskOf(useSession());

/** What the desk of printed words shows now. */
export function useWords(desk: WordDesk): {
  readonly state: WordState;
  readonly items: readonly WordItem[];
  readonly current: WordItem | null;
} {
  const state = useSyncExternalStore(desk.subscribe, desk.get);
  // What words can be written to changes with the drawing, the sheet, the machine and the lines that were followed: what
  // is shown must be what a confirmation writes.
  useSelected(({ job }) => job);
  useSelected(({ sheet }) => sheet);
  useSelected(({ machine }) => machine);
  useTrace(({ traced }) => traced);
  return { state, items: desk.items(), current: desk.current() };
}
