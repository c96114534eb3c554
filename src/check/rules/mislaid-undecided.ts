import { listAnd } from "../../roles/index.ts";
import { howSure, mishapInWords, subjectsOf } from "../mislaid/words.ts";
import { defineRule, type MislaidView } from "../rule.ts";
import { capital } from "../words.ts";

/** Explanations named beside the smallest, at most. */
const MOST_NAMED = 2;

export const mislaidUndecided = defineRule({
  id: "mislaid-undecided",
  severity: "note",
  about: "mislaid",
  find: (view) => {
    const { plug, mislaid, settles } = view;
    const { sure, explained, odd } = mislaid;
    if (sure === "certain") return [];
    return [
      {
        subjects: [...subjectsOf({ plug }, explained[0].hypothesis), ...odd.map(({ id }) => id)],
        message: `${capital(said(view))} ${settles}`,
      },
    ];
  },
});

function said({ plug, mislaid }: MislaidView): string {
  const { sure, explained, drawn } = mislaid;
  const [{ hypothesis, tally }, ...others] = explained;
  const what = mishapInWords({ plug }, hypothesis);
  const { mishap } = hypothesis;
  if (sure === "by-colour" && mishap.is === "exchanged")
    return `the colours at cavities ${mishap.a} and ${mishap.b} of plug ${plug.id} stand exchanged: each has the wire that is drawn at the other.`;
  const fits = `what you measured fits the drawing if ${what} (${howSure(tally, drawn)})`;
  if (sure === "faults-untried")
    return `${fits}. Whether one fault could show the same is not worked out.`;
  if (sure === "or-a-fault") return `${fits}. One fault could show the same readings.`;
  const also = others
    .slice(0, MOST_NAMED)
    .map((one) => `if ${mishapInWords({ plug }, one.hypothesis)}`);
  const more = others.length - also.length;
  const rest = more > 0 ? [`in ${more} more ${more === 1 ? "way" : "ways"}`] : [];
  return others.length === 0
    ? `${fits}. Too little was read to be sure.`
    : `${fits}. It fits as well ${listAnd([...also, ...rest])}.`;
}
