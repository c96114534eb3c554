import { useCallback, useEffect, useRef, useState } from "react";

/** Milliseconds for which what is doubtful must be in sight before it is taken: no one looks at it in less. */
const LOOK = 700;

interface TakenLook {
  /** To be called as soon as it is in sight. */
  show: () => void;
  /** Whether it has been in sight long enough, and nobody was in a hurry; if not, that is told, and it takes as long again. */
  isTaken: () => boolean;
  /** Whether somebody was in too much of a hurry. */
  isHasty: boolean;
}

/**
 * Holds back what would confirm a doubtful thing that has only just come to hand: a key or a click that was meant for
 * the one before it. `id`: another thing begins anew. `doubts`: so do other doubts of the same one, at once.
 */
export function useTakenLook(id: string, doubts: string, now: () => number): TakenLook {
  const since = useRef<number | null>(null);
  const [hasty, setHasty] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another thing in hand has not been seen yet
  useEffect(() => {
    setHasty(null);
    return () => {
      since.current = null;
    };
  }, [id]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is doubtful now has not been looked at either
  useEffect(() => {
    if (since.current !== null) since.current = now();
  }, [doubts, now]);
  const show = useCallback(() => {
    since.current ??= now();
  }, [now]);
  const isTaken = () => {
    if (since.current !== null && now() - since.current >= LOOK) return true;
    if (since.current !== null) since.current = now();
    setHasty(id);
    return false;
  };
  return { show, isTaken, isHasty: hasty === id };
}
