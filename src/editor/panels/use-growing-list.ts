import { useCallback, useRef, useState } from "react";

/** Items that come with the first look, and at each time that their end comes near. */
const STEP = 30;
/** How far below the sight the end is when more comes, pixels. */
const AHEAD = "600px";

/**
 * The beginning of a list that may hold thousands, and more of it as one scrolls down. Put `end` on
 * an element behind it, there while `isMore`. At least `needed` members are shown.
 */
export function useGrowingList<T>(
  list: readonly T[],
  needed: number,
): {
  readonly shown: readonly T[];
  readonly isMore: boolean;
  readonly end: (element: Element | null) => void;
} {
  const [room, setRoom] = useState(STEP);
  const observer = useRef<IntersectionObserver | null>(null);
  // Where sight can't be asked about, all of it is there from the beginning.
  const most = typeof IntersectionObserver === "undefined" ? list.length : Math.max(room, needed);
  const end = useCallback((element: Element | null) => {
    observer.current?.disconnect();
    observer.current = null;
    if (!element) return;
    observer.current = new IntersectionObserver(
      ([entry]) => entry?.isIntersecting && setRoom((now) => now + STEP),
      { rootMargin: AHEAD },
    );
    observer.current.observe(element);
  }, []);
  return { shown: list.slice(0, most), isMore: most < list.length, end };
}
