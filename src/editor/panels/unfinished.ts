import { newDraft, type ReadingDraft, type Session } from "../../session/index.ts";

/**
 * Readings begun and not kept: they outlive the pad, the tab and a flat battery, on this device,
 * until the user keeps or discards them.
 */
export interface Unfinished {
  /** The one on the pad, as it was last. */
  readonly live: ReadingDraft | null;
  /** Those put aside, newest first. */
  readonly aside: readonly ReadingDraft[];
}

const NOTHING: Unfinished = { live: null, aside: [] };
const MOST_ASIDE = 8;

const storageKey = (job: string) => `pintruth-unfinished-${job}`;

export function readUnfinished(job: string): Unfinished {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(storageKey(job)) ?? "null");
    if (typeof stored !== "object" || stored === null) return NOTHING;
    const { live, aside } = stored as { live?: unknown; aside?: unknown };
    return {
      live: mended(live),
      aside: (Array.isArray(aside) ? aside : []).map(mended).filter((one) => one !== null),
    };
  } catch {
    return NOTHING;
  }
}

/** Storage is written by older versions too: whatever is missing comes from an empty pad. */
function mended(stored: unknown): ReadingDraft | null {
  if (typeof stored !== "object" || stored === null) return null;
  const draft = { ...newDraft(), ...stored } as ReadingDraft;
  return typeof draft.value === "string" && typeof draft.when === "object" ? draft : null;
}

function write(job: string, unfinished: Unfinished): void {
  try {
    if (!unfinished.live && unfinished.aside.length === 0) localStorage.removeItem(storageKey(job));
    else localStorage.setItem(storageKey(job), JSON.stringify(unfinished));
  } catch {
    // A full or forbidden storage must not keep anyone from entering a reading.
  }
}

/** A value or a note was typed: the part that is lost hardest. */
export const isWorthKeeping = (draft: ReadingDraft | null): draft is ReadingDraft =>
  draft !== null && (draft.value.trim() !== "" || draft.note.trim() !== "");

/** Remembers what stands on the pad at this moment. */
export const rememberLive = (job: string, live: ReadingDraft | null): void =>
  write(job, { ...readUnfinished(job), live });

export function putAside(job: string, draft: ReadingDraft): void {
  const { aside } = readUnfinished(job);
  write(job, { live: null, aside: [draft, ...aside].slice(0, MOST_ASIDE) });
}

export function dropAside(job: string, place: number): void {
  const { live, aside } = readUnfinished(job);
  write(job, { live, aside: aside.filter((_, index) => index !== place) });
}

/** Opens the pad for another reading; what was typed for the one before is put aside first. */
export function beginReading(session: Session, draft: ReadingDraft): void {
  const { key, draft: before } = session.get();
  if (isWorthKeeping(before)) putAside(key, before);
  session.show({ draft });
}
