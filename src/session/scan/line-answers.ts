import type { Point } from "../../base/index.ts";
import type { Id, LineAnswer } from "../../job/index.ts";
import { plain } from "../diagram/draft.ts";
import type { Session } from "../session.ts";
import { isOnePlace } from "./doubtful-places.ts";

/** Keeps what was said of a doubtful place with its sheet. One edit. */
export function answerLines(session: Session, sheet: Id, at: Point, joined: boolean): void {
  const label = joined ? "Say that lines are joined here" : "Say that lines are not joined here";
  writeAnswers(session, sheet, label, (before) => [
    ...before.filter((one) => !isOnePlace(one.at, at)),
    { at: [at[0], at[1]], joined },
  ]);
}

/** Keeps with its sheet that the stretch of line at a place is none. One edit. */
export function leaveOutLine(session: Session, sheet: Id, at: Point): void {
  writeAnswers(session, sheet, "Leave out what is no line", (before) => [
    ...before.filter((one) => !isOnePlace(one.at, at)),
    { at: [at[0], at[1]], joined: false, stray: true },
  ]);
}

/** Takes back what was said of a place. One edit. */
export function takeBackAnswer(session: Session, sheet: Id, at: Point): void {
  writeAnswers(session, sheet, "Take back what was said of lines", (before) =>
    before.filter((one) => !isOnePlace(one.at, at)),
  );
}

function writeAnswers(
  session: Session,
  id: Id,
  label: string,
  change: (before: readonly LineAnswer[]) => LineAnswer[],
): void {
  session.edit(label, (draft) => {
    const place = plain(draft).diagram.sheets.findIndex((one) => one.id === id);
    const sheet = draft.diagram.sheets[place];
    if (!sheet) return;
    const answers = change(plain(sheet).answers ?? []);
    if (answers.length > 0) sheet.answers = answers;
    else delete sheet.answers;
  });
}
