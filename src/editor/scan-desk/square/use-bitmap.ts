import { useEffect, useRef, useState } from "react";

/** A bitmap with what it was asked for by. */
export interface Seen<A> {
  readonly ask: A;
  readonly bitmap: ImageBitmap;
}

/** What there is to show of what is asked for. */
export interface Looked<A> {
  /** The newest that has come: of an older ask while the newest is worked out. */
  readonly seen: Seen<A> | null;
  readonly isLate: boolean;
  readonly problem: string | null;
}

/**
 * A bitmap that is asked for again whenever the ask is another one: one at a time, always the newest
 * next, and each closed once another takes its place. Null asks for nothing.
 *
 * @param wait milliseconds that an ask must stand before it is worth the work
 */
export function useBitmap<A>(
  ask: A | null,
  get: (ask: A) => Promise<ImageBitmap>,
  wait = 0,
): Looked<A> {
  const [seen, setSeen] = useState<Seen<A> | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const key = ask === null ? null : JSON.stringify(ask);
  const wanted = useRef<A | null>(null);
  const held = useRef<ImageBitmap | null>(null);
  const state = useRef({ isBusy: false, isGone: false });
  const getNow = useRef(get);
  getNow.current = get;

  useEffect(() => {
    const now = state.current;
    now.isGone = false;
    return () => {
      now.isGone = true;
      held.current?.close();
      held.current = null;
    };
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again when the ask says something else
  useEffect(() => {
    wanted.current = ask;
    if (ask === null) {
      setSeen(null);
      return;
    }
    const run = async () => {
      if (state.current.isBusy) return;
      state.current.isBusy = true;
      for (let now: A | null = wanted.current; now !== null; ) {
        const asked: A = now;
        await getNow.current(asked).then(
          (bitmap) => take(asked, bitmap),
          (error) => tell(error instanceof Error ? error : new Error(String(error))),
        );
        now = state.current.isGone || wanted.current === asked ? null : wanted.current;
      }
      state.current.isBusy = false;
    };
    const take = (asked: A, bitmap: ImageBitmap) => {
      if (state.current.isGone || wanted.current === null) {
        bitmap.close();
        return;
      }
      held.current?.close();
      held.current = bitmap;
      setSeen({ ask: asked, bitmap });
      setProblem(null);
    };
    const tell = (error: Error) => {
      if (!state.current.isGone && error.name !== "CalledOff") setProblem(error.message);
    };
    const timer = setTimeout(run, wait);
    return () => clearTimeout(timer);
  }, [key, wait]);

  const isLate = key !== null && (seen === null || JSON.stringify(seen.ask) !== key);
  return { seen, isLate, problem };
}
