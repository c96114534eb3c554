import type { Correction, NoteMove } from "../correction.ts";
import type { Found, MislaidView } from "../rule.ts";
import { capital } from "../words.ts";
import { type Mishap, notesMovedBy } from "./hypothesis.ts";
import { howSure, mishapInWords, subjectsOf } from "./words.ts";

/** What is told where nothing but a mishap of this sort makes everything agree. */
export function toldOf(
  { plug, mislaid }: MislaidView,
  is: Mishap["is"],
  advice: string,
  corrections: (moves: readonly NoteMove[]) => readonly Correction[],
): readonly Found[] {
  if (mislaid === null) return [];
  const { sure, drawn, odd, explained } = mislaid;
  const [{ hypothesis, tally }] = explained;
  if (sure !== "certain" || hypothesis.mishap.is !== is) return [];
  const what = mishapInWords({ plug }, hypothesis);
  return [
    {
      subjects: [...subjectsOf({ plug }, hypothesis), ...odd.map(({ id }) => id)],
      message: `What you measured fits the drawing only if ${what} (${howSure(tally, drawn)}). No single fault shows this. ${capital(advice)}`,
      corrections: corrections(notesMovedBy(hypothesis)),
    },
  ];
}
