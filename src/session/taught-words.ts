import type { Job, RoleName } from "../job/index.ts";
import { taughtKey, wordsForRole } from "../roles/index.ts";
import { takeOut } from "./diagram/draft.ts";
import type { Session } from "./session.ts";

/** Says what a printed word means in this job, beside every pin that has it: one edit. */
export function teachWord(session: Session, printed: string, role: RoleName): void {
  const word = printed.trim();
  if (word === "") return;
  session.edit(`Say that “${word}” means ${wordsForRole(role)}`, (draft) => {
    draft.words ??= [];
    const known = draft.words.find((one) => isSameWord(one.printed, word));
    if (known) known.role = role;
    else draft.words.push({ printed: word, role });
  });
}

/** Takes back what a printed word means in this job: one edit. */
export function forgetWord(session: Session, printed: string): void {
  const word = printed.trim();
  session.edit(`Forget what “${word}” means`, (draft) => {
    if (!draft.words) return;
    takeOut(draft.words, (one) => isSameWord(one.printed, word));
    if (draft.words.length === 0) delete draft.words;
  });
}

/** How many pins of modules have this word beside them. */
export const pinsWithWord = ({ diagram: { parts } }: Job, printed: string): number =>
  parts
    .flatMap((part) => (part.kind === "module" ? part.pins : []))
    .filter((pin) => pin.printed !== undefined && isSameWord(pin.printed, printed)).length;

const isSameWord = (a: string, b: string) => taughtKey(a) === taughtKey(b);
