import { type Id, type Job, ownerOf, type Part, type PinRef } from "../../job/index.ts";
import type { Session } from "../session.ts";
import { pictureFileOf } from "./picture-file.ts";
import { justImported } from "./square-offer.ts";
import { wordDeskOf } from "./words/word-desk.ts";

/** What is next at the scan desk: things are best done in this order, each helps the one after it. */
export type ScanStep = "square" | "parts" | "words" | "trace";

/** What the job does not say of how far the picture of the sheet at hand is. */
export interface ScanProgress {
  /** The screen asks whether it is to be squared up. */
  readonly isSquaringOffered: boolean;
  /** Its words were looked for. */
  readonly areWordsRead: boolean;
  /** Some of those are neither written nor skipped. */
  readonly areWordsLeft: boolean;
}

export const NOT_BEGUN: ScanProgress = {
  isSquaringOffered: false,
  areWordsRead: false,
  areWordsLeft: false,
};

/** How far the picture of the sheet at hand is. The same primitives while nothing changes. */
export function scanProgress(session: Session): ScanProgress {
  const { sheet, job } = session.get();
  const file = pictureFileOf(session.get());
  const desk = wordDeskOf(session);
  const areWordsRead = file !== null && desk?.get().file === file;
  return {
    isSquaringOffered: sheet !== null && justImported(session).get().offered.includes(sheet),
    areWordsRead,
    // Of a sheet with wires nothing more is said, and its many words are not gone through for it.
    areWordsLeft:
      areWordsRead &&
      !isWired(job, sheet) &&
      (desk?.items().some(({ state }) => state === "open") ?? false),
  };
}

/** Tells of every change of that progress. Returns how to stop it. */
export function watchScanProgress(session: Session, tell: () => void): () => void {
  const stops = [session, justImported(session), wordDeskOf(session)].map((store) =>
    store?.subscribe(tell),
  );
  return () => {
    for (const stop of stops) stop?.();
  };
}

/**
 * The next thing to do with the picture of a sheet; null where there is none, or nothing is left.
 * `sheet` null: of all sheets with a picture together.
 */
export function scanStepOf(job: Job, sheet: Id | null, progress: ScanProgress): ScanStep | null {
  const { sheets, parts } = job.diagram;
  const isOne = (id: Id) => sheet === null || id === sheet;
  if (!sheets.some((one) => isOne(one.id) && one.image)) return null;
  if (progress.isSquaringOffered) return "square";
  const own = parts.filter((part) => isOne(part.sheet));
  // Splices and page ends come with the lines themselves: of them alone nothing is said of its parts.
  if (own.every(({ kind }) => kind === "splice" || kind === "offpage")) return "parts";
  if (isWired(job, sheet)) return null;
  const isWritten = progress.areWordsRead ? !progress.areWordsLeft : isLettered(own);
  return isWritten ? "trace" : "words";
}

function isWired({ diagram: { parts, wires } }: Job, sheet: Id | null): boolean {
  if (wires.length === 0) return false;
  const ids = new Set(
    parts.flatMap((part) => (sheet === null || part.sheet === sheet ? part.id : [])),
  );
  const isOwn = (ref: PinRef) => ids.has(ownerOf(ref));
  return wires.some(({ from, to }) => isOwn(from) || isOwn(to));
}

/**
 * As far as the drawing itself tells, its words are written: every pin of its modules has one; without a module,
 * some part has a label. What a queue of words still held does not outlive the page.
 */
function isLettered(parts: readonly Part[]): boolean {
  const pins = parts.flatMap((part) => (part.kind === "module" ? part.pins : []));
  return pins.length > 0
    ? pins.every(({ printed }) => printed !== undefined)
    : parts.some(({ label }) => label !== undefined);
}
