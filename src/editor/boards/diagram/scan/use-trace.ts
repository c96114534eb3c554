import { useSyncExternalStore } from "react";
import { type TraceState, traceDeskOf } from "../../../../session/index.ts";
import { useSession } from "../../../session-context.tsx";

const never = () => () => {};

/** A slice of what is known of the picture's lines; `select` must return a stored object or a primitive. */
export function useTrace<T>(select: (state: TraceState) => T): T | null {
  const desk = traceDeskOf(useSession());
  return useSyncExternalStore(desk?.subscribe ?? never, () => (desk ? select(desk.get()) : null));
}
