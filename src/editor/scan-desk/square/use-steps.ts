import { useCallback, useEffect, useState } from "react";

interface Steps<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** Names the intention that the newest step is part of; null for one of its own. */
  readonly intention: string | null;
}

/** Something changed step by step, with the way back and forth. */
export interface StepsHere<T> {
  readonly now: T;
  /** Changes under one `intention`, such as a drag, are one step. What stays the same object is none. */
  readonly set: (change: (now: T) => T, intention?: string) => void;
  readonly undo: (() => void) | null;
  readonly redo: (() => void) | null;
}

export function useSteps<T>(begin: () => T): StepsHere<T> {
  const [steps, setSteps] = useState<Steps<T>>(() => ({
    past: [],
    now: begin(),
    future: [],
    intention: null,
  }));
  const set = useCallback((change: (now: T) => T, intention?: string) => {
    setSteps((before) => {
      const now = change(before.now);
      if (now === before.now) return before;
      const goesOn = intention !== undefined && before.intention === intention;
      const past = goesOn ? before.past : [...before.past, before.now];
      return { past, now, future: [], intention: intention ?? null };
    });
  }, []);
  const [last, next] = [steps.past.at(-1), steps.future[0]];
  return {
    now: steps.now,
    set,
    undo:
      last === undefined
        ? null
        : () =>
            setSteps({
              past: steps.past.slice(0, -1),
              now: last,
              future: [steps.now, ...steps.future],
              intention: null,
            }),
    redo:
      next === undefined
        ? null
        : () =>
            setSteps({
              past: [...steps.past, steps.now],
              now: next,
              future: steps.future.slice(1),
              intention: null,
            }),
  };
}

/** The usual keys of undo and redo, for as long as the component is there. */
export function useStepKeys({ undo, redo }: Pick<StepsHere<unknown>, "undo" | "redo">): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const isRedo = key === "y" || (key === "z" && event.shiftKey);
      if (key !== "z" && !isRedo) return;
      event.preventDefault();
      (isRedo ? redo : undo)?.();
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [undo, redo]);
}
