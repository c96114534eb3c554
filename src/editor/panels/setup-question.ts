import { type Question, type ReadingDraft, setupOf } from "../../session/index.ts";

/** What to ask before the reading on the pad is taken; null until both leads are somewhere. */
export function setupQuestion(draft: ReadingDraft): Extract<Question, { about: "setup" }> | null {
  const setup = setupOf(draft);
  return setup && draft.red !== draft.black ? { about: "setup", setup } : null;
}
