import { useCallback, useState, useSyncExternalStore } from "react";

/** `desk`: boards side by side; `upright`: boards stacked; `phone`: one thing at a time. */
export type Form = "desk" | "upright" | "phone";
export const TABLE_HEIGHTS = ["low", "half", "full"] as const;
export type TableHeight = (typeof TABLE_HEIGHTS)[number];

const PHONE = "(max-width: 700px), (max-height: 480px)";
const UPRIGHT = "(max-width: 1000px)";
/** The same in app.module.css: the table takes the whole width. */
const NARROW = "(max-width: 1200px)";
/** Half of the boards' room is too little there to judge a picture by, with a list beside it. */
const CRAMPED = "(max-width: 1600px)";
const STORAGE_KEY = "pintruth-layout";
const SMALLEST_SHARE = 0.2;

function matches(query: string) {
  return matchMedia(query).matches;
}

function watch(listener: () => void) {
  const queries = [PHONE, UPRIGHT, NARROW, CRAMPED].map((query) => matchMedia(query));
  for (const query of queries) query.addEventListener("change", listener);
  return () => {
    for (const query of queries) query.removeEventListener("change", listener);
  };
}

export function useForm(): Form {
  return useSyncExternalStore(watch, () =>
    matches(PHONE) ? "phone" : matches(UPRIGHT) ? "upright" : "desk",
  );
}

/** The panel beside the boards ends where the table begins, so that they share the height. */
export const useNarrow = (): boolean => useSyncExternalStore(watch, () => matches(NARROW));

/** A picture that is worked on needs the room of both boards. */
export const useCramped = (): boolean => useSyncExternalStore(watch, () => matches(CRAMPED));

interface Sizes {
  /** Part of the boards' room that the diagram takes, 0 to 1. */
  readonly share: number;
  /** The same where the boards are stacked. */
  readonly stackedShare: number;
  readonly table: TableHeight;
}

function storedSizes(): Sizes {
  const fallback: Sizes = { share: 0.58, stackedShare: 0.5, table: "half" };
  try {
    const stored = JSON.parse(localStorage.getItem(STORAGE_KEY) ?? "{}") as Partial<Sizes>;
    const part = (kept: unknown, otherwise: number) =>
      clampShare(typeof kept === "number" ? kept : otherwise);
    return {
      share: part(stored.share, fallback.share),
      stackedShare: part(stored.stackedShare, fallback.stackedShare),
      table: TABLE_HEIGHTS.find((height) => height === stored.table) ?? fallback.table,
    };
  } catch {
    return fallback;
  }
}

export const clampShare = (share: number) =>
  Math.min(1 - SMALLEST_SHARE, Math.max(SMALLEST_SHARE, share));

/** How the user divided the screen; kept on this device and no part of the job. */
export function useSizes() {
  const [sizes, setSizes] = useState(storedSizes);
  const change = useCallback((next: Partial<Sizes>) => {
    setSizes((now) => {
      const changed = { ...now, ...next };
      localStorage.setItem(STORAGE_KEY, JSON.stringify(changed));
      return changed;
    });
  }, []);
  return { ...sizes, change };
}
