import { useEffect } from "react";
import { keepWithMachine } from "../panels/unfinished.ts";
import { useSelected, useSession } from "../session-context.tsx";

/**
 * Goes to the reading pad when a reading is begun from anywhere else, and back to it once the
 * probe that was asked for has been placed; `back` is for screens that show one thing at a time.
 * Wherever the user is, a reading begun stays with the machine that it was begun on.
 */
export function useReadingStation(onPad: () => void, back: boolean): void {
  const session = useSession();
  useEffect(() => keepWithMachine(session), [session]);
  const reading = useSelected((state) => state.draft !== null);
  const asks = useSelected((state) => state.draft?.asks ?? null);
  const settled = reading && (!back || asks === null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only these changes lead to the pad
  useEffect(() => {
    if (reading) onPad();
  }, [reading]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  useEffect(() => {
    if (settled && back) onPad();
  }, [settled, asks]);
}
