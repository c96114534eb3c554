import { type Id, type Job, ownerOf, type PinRef } from "../../job/index.ts";
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
}

export const NOT_BEGUN: ScanProgress = { isSquaringOffered: false, areWordsRead: false };

/** How far the picture of the sheet at hand is. The same primitives while nothing changes. */
export function scanProgress(session: Session): ScanProgress {
  const { sheet } = session.get();
  const file = pictureFileOf(session.get());
  const words = wordDeskOf(session)?.get();
  return {
    isSquaringOffered: sheet !== null && justImported(session).get().offered.includes(sheet),
    areWordsRead: file !== null && words?.file === file,
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
  const { sheets, parts, wires } = job.diagram;
  const isOne = (id: Id) => sheet === null || id === sheet;
  if (!sheets.some((one) => isOne(one.id) && one.image)) return null;
  if (progress.isSquaringOffered) return "square";
  const own = parts.filter((part) => isOne(part.sheet));
  // Splices and page ends come with the lines themselves: of them alone nothing is said of its parts.
  if (own.every(({ kind }) => kind === "splice" || kind === "offpage")) return "parts";
  const ids = new Set(own.map(({ id }) => id));
  const isOwn = (ref: PinRef) => ids.has(ownerOf(ref));
  if (wires.some(({ from, to }) => isOwn(from) || isOwn(to))) return null;
  const isWritten = own.some(
    (part) =>
      part.label !== undefined ||
      (part.kind === "module" && part.pins.some(({ printed }) => printed !== undefined)),
  );
  return isWritten || progress.areWordsRead ? "trace" : "words";
}
