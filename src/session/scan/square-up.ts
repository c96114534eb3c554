import type { Id, Job, Sheet } from "../../job/index.ts";
import { type CleanStep, NOT_SQUARED, planOf, type Squaring } from "../../scan/index.ts";
import { plain } from "../diagram/draft.ts";
import type { Session } from "../session.ts";
import { moveBetween, moveDrawing } from "./moved-drawing.ts";
import {
  isUnchanged,
  originalOf,
  planOfSheet,
  squaringFields,
  squaringOf,
} from "./sheet-squaring.ts";

/** A sheet's picture made anew from the one that came. */
export interface SquaredPicture {
  readonly squaring: Squaring;
  readonly cleaning: readonly CleanStep[];
  /** The result as it was stored; null where the picture stays as it came. */
  readonly image: NonNullable<Sheet["image"]> | null;
}

/** Why a sheet can't have this squaring, one sentence; null where it can. */
export function squaringProblem(job: Job, id: Id, squaring: Squaring): string | null {
  const sheet = job.diagram.sheets.find((one) => one.id === id);
  const original = sheet && originalOf(sheet);
  if (!sheet || !original) return "This sheet has no picture.";
  if (!planOf(squaring, original)) return noPlanWords(squaring, original);
  const isTurnedOver = squaring.isMirrored !== squaringOf(sheet).isMirrored;
  return isTurnedOver && hasParts(job, id)
    ? "Parts are drawn on this sheet, and mirroring would put their pins on the wrong side: mirror a picture before you draw on it."
    : null;
}

/** Why no picture can be made by a squaring, one sentence. */
export function noPlanWords(
  squaring: Squaring,
  original: { readonly width: number; readonly height: number },
): string {
  const { corners, bow } = squaring;
  if (!planOf({ ...NOT_SQUARED, corners, bow }, original))
    return "These four corners make no page: two sides cross, or three lie on one line. Drag them apart.";
  return "With so much shown beyond the corners, or so much tilt, the picture runs past the horizon of the photo or gets too large: take some of it back.";
}

/** Whether any machine has a part drawn on a sheet. */
export function hasParts(job: Job, sheet: Id): boolean {
  const isOn = (part: { readonly sheet: Id }) => part.sheet === sheet;
  return (
    job.diagram.parts.some(isOn) ||
    job.machines.some(({ changes }) => changes?.some(({ parts }) => parts?.some(isOn)))
  );
}

/** One edit: the sheet's picture is another one, and what is drawn over it goes along. */
export function squareUpSheet(session: Session, id: Id, squared: SquaredPicture): void {
  session.editWhole("Square up the picture", (draft) => setSquaring(draft, id, squared));
}

/** Writes a sheet's new picture and how it was made; moves what is drawn on it on every machine. */
export function setSquaring(draft: Job, id: Id, squared: SquaredPicture): void {
  const { diagram } = plain(draft);
  const place = diagram.sheets.findIndex((one) => one.id === id);
  const [before, sheet] = [diagram.sheets[place], draft.diagram.sheets[place]];
  const original = before && originalOf(before);
  if (!sheet || !before || !original) return;
  const { cleaning, image } = squared;
  const isKept = image === null || isUnchanged(squared.squaring, cleaning);
  const squaring = isKept ? NOT_SQUARED : squared.squaring;
  const [was, will] = [planOfSheet(before), planOf(squaring, original)];
  const isSame = JSON.stringify(squaringOf(before)) === JSON.stringify(squaring);
  if (was && will && !isSame) moveDrawing(draft, id, moveBetween(was, will));
  for (const field of ["corners", "squaring", "cleaning", "original"] as const) delete sheet[field];
  if (isKept) {
    sheet.image = { ...original };
    return;
  }
  const { corners } = squaring;
  const fields = squaringFields(squaring);
  sheet.image = { ...image };
  sheet.original = { ...original };
  if (corners) sheet.corners = corners.map(([x, y]) => [x, y]) as NonNullable<Sheet["corners"]>;
  if (fields) sheet.squaring = fields;
  if (cleaning.length > 0) {
    sheet.cleaning = cleaning.map((step) =>
      step.does === "inks" ? { ...step, keep: [...step.keep] } : { ...step },
    );
  }
}
