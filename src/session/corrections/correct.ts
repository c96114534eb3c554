import type { Correction, Finding } from "../../check/index.ts";
import { drawnOf } from "../changes/drawn-job.ts";
import type { Session } from "../session.ts";
import { adoptRole, dropRole } from "./adopted-role.ts";
import type { CorrectionEdit, CorrectionOf, Does, Place } from "./correction-edit.ts";
import { markAsGoingOn } from "./going-on.ts";
import { moveWords, moveWordsAcross } from "./moved-words.ts";
import { doubtedPlaces, offeredFor } from "./offered.ts";
import {
  correctMark,
  exchangeCavities,
  flipFace,
  keepLink,
  markEmpty,
  markInUse,
  moveNotes,
  removeLink,
} from "./plug-corrections.ts";
import { takeColour, takeNumber } from "./wire-corrections.ts";

const EDITS: { readonly [D in Does]: CorrectionEdit<CorrectionOf<D>> } = {
  "adopt-role": adoptRole,
  "drop-role": dropRole,
  "exchange-cavities": exchangeCavities,
  "flip-face": flipFace,
  "move-notes": moveNotes,
  "correct-mark": correctMark,
  "mark-empty": markEmpty,
  "mark-in-use": markInUse,
  "take-colour": takeColour,
  "take-number": takeNumber,
  "remove-link": removeLink,
  "keep-link": keepLink,
  "mark-as-going-on": markAsGoingOn,
  "move-words": moveWords,
  "move-words-across": moveWordsAcross,
};

// `does` picks the edit of its own kind; the compiler can't follow that through a union.
const editOf = ({ does }: Correction) => EDITS[does] as CorrectionEdit;

/** What the button of a correction says, beginning with a verb. */
export const correctionLabel = (correction: Correction, place: Place): string =>
  editOf(correction).label(correction, place);

/** Makes a correction: one edit, under the words of its button. */
export function correct(session: Session, correction: Correction): void {
  const { machine } = session.get();
  const label = correctionLabel(correction, { job: drawnOf(session.get()), machine });
  session.edit(label, (draft) => editOf(correction).change(draft, correction, machine));
}

/** What can be put right about some things, each way once, findings set aside left out. */
export function correctionsAbout(
  findings: readonly Finding[],
  refs: ReadonlySet<string>,
): readonly Correction[] {
  const found = new Map<string, Correction>();
  const doubted = doubtedPlaces(findings);
  for (const finding of findings) {
    const { subjects, setAside } = finding;
    if (setAside !== undefined || !subjects.some((subject) => refs.has(subject))) continue;
    for (const one of offeredFor(finding, doubted)) found.set(JSON.stringify(one), one);
  }
  return [...found.values()];
}
