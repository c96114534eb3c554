import { newDraft, type ReadingDraft, type Session } from "../../session/index.ts";

/** A reading begun, with the machine that the leads are on: it is no reading of any other. */
export interface BegunReading extends ReadingDraft {
  /** Id of the machine; absent in what older versions stored. */
  readonly machine?: string;
}

/**
 * Readings begun and not kept: they outlive the pad, the tab and a flat battery, on this device,
 * until the user keeps or discards them.
 */
export interface Unfinished {
  /** The one on the pad, as it was last. */
  readonly live: BegunReading | null;
  /** Those put aside, newest first. */
  readonly aside: readonly BegunReading[];
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
function mended(stored: unknown): BegunReading | null {
  if (typeof stored !== "object" || stored === null) return null;
  const draft = { ...newDraft(), ...stored } as BegunReading;
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
export const rememberLive = (job: string, live: BegunReading | null): void =>
  write(job, { ...readUnfinished(job), live });

export function putAside(job: string, draft: BegunReading): void {
  const { aside } = readUnfinished(job);
  write(job, { live: null, aside: [draft, ...aside].slice(0, MOST_ASIDE) });
}

export function dropAside(job: string, place: number): void {
  const { live, aside } = readUnfinished(job);
  write(job, { live, aside: aside.filter((_, index) => index !== place) });
}

/** Opens the pad for another reading; what was typed for the one before is put aside first. */
export function beginReading(session: Session, draft: ReadingDraft): void {
  const { key, machine, draft: before } = session.get();
  if (isWorthKeeping(before)) putAside(key, { ...before, machine });
  session.show({ draft });
}

/** Puts one that was put aside back on the pad, and its machine at hand. */
export function goOnWith(session: Session, { machine, ...draft }: BegunReading): void {
  session.show({ draft, ...(machine === undefined ? {} : { machine }) });
}

/**
 * Keeps a begun reading with its machine: when another one is taken to hand, by whatever way, the
 * reading is put aside and the pad closes. Returns the call that ends it.
 */
export function keepWithMachine(session: Session): () => void {
  let before = session.get();
  return session.subscribe(() => {
    const was = before;
    before = session.get();
    const { key, machine, draft } = before;
    if (draft === null || draft !== was.draft || key !== was.key || machine === was.machine) return;
    if (draft.red !== null || isWorthKeeping(draft)) {
      putAside(key, { ...draft, machine: was.machine });
    } else rememberLive(key, null);
    session.show({ draft: null });
  });
}
