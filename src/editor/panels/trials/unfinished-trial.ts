import { useEffect } from "react";
import { isWorthGoingOn, newTrial, type TrialDraft } from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";

const storageKey = (job: string) => `pintruth-trial-${job}`;

/** Remembers the trial begun on this device at every touch, and gives it back after a closed tab. */
export function useTrialKept(): void {
  const session = useSession();
  const key = useSelected((state) => state.key);
  const trial = useSelected((state) => state.trial);
  // before the first write, which would forget it
  useEffect(() => {
    const stored = session.get().trial === null ? readTrial(key) : null;
    if (stored) session.show({ trial: stored });
  }, [session, key]);
  useEffect(() => {
    try {
      if (trial && isWorthGoingOn(trial))
        localStorage.setItem(storageKey(key), JSON.stringify(trial));
      // React's first pass still has the state from before the trial was given back
      else if (session.get().trial === trial) localStorage.removeItem(storageKey(key));
    } catch {
      // A full or forbidden storage must not keep anyone from trying.
    }
  }, [session, key, trial]);
}

function readTrial(job: string): TrialDraft | null {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(storageKey(job)) ?? "null");
    if (typeof stored !== "object" || stored === null) return null;
    const draft = { ...newTrial(""), ...stored } as TrialDraft;
    const sound =
      typeof draft.machine === "string" &&
      typeof draft.note === "string" &&
      isRecord(draft.when) &&
      isRecord(draft.saw);
    return sound && isWorthGoingOn(draft) ? draft : null;
  } catch {
    return null;
  }
}

const isRecord = (value: unknown): boolean => typeof value === "object" && value !== null;
