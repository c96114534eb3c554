import { useCallback, useMemo, useSyncExternalStore } from "react";
import { type ScanProgress, scanProgress, watchScanProgress } from "../session/index.ts";
import { useSession } from "./session-context.tsx";

/** How far the picture of the sheet at hand is. The same object while nothing changes. */
export function useScanProgress(): ScanProgress {
  const session = useSession();
  const watch = useCallback((tell: () => void) => watchScanProgress(session, tell), [session]);
  const now = () => scanProgress(session);
  const isSquaringOffered = useSyncExternalStore(watch, () => now().isSquaringOffered);
  const areWordsRead = useSyncExternalStore(watch, () => now().areWordsRead);
  const areWordsLeft = useSyncExternalStore(watch, () => now().areWordsLeft);
  return useMemo(
    () => ({ isSquaringOffered, areWordsRead, areWordsLeft }),
    [isSquaringOffered, areWordsRead, areWordsLeft],
  );
}
