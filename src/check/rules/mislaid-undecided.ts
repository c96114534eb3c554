import type { Plug } from "../../job/index.ts";
import { listAnd } from "../../roles/index.ts";
import type { Explained, Mislaid } from "../mislaid/mislaid.ts";
import { howSure, marksInWords, mishapInWords, subjectsOf } from "../mislaid/words.ts";
import { defineRule, type Found, type MislaidView } from "../rule.ts";
import { capital } from "../words.ts";

/** Explanations named beside the smallest, at most. */
const MOST_NAMED = 2;

export const mislaidUndecided = defineRule({
  id: "mislaid-undecided",
  severity: "note",
  about: "mislaid",
  find: (view) => [...byEvidence(view), ...byMarks(view)],
});

function byEvidence({ plug, mislaid, settles }: MislaidView): readonly Found[] {
  if (mislaid === null || mislaid.sure === "certain") return [];
  const { explained, odd } = mislaid;
  return [
    {
      subjects: [...subjectsOf({ plug }, explained[0].hypothesis), ...odd.map(({ id }) => id)],
      message: `${capital(said(plug, mislaid))} ${settles}`,
    },
  ];
}

/** Where readings and colours say already that the face was read from its other side, nothing more. */
function byMarks({ plug, mislaid, marks }: MislaidView): readonly Found[] {
  if (marks === null || mislaid?.explained[0].hypothesis.mishap.is === "mirrored") return [];
  return [{ subjects: [plug.id], message: marksInWords(plug, marks) }];
}

function said(plug: Plug, { sure, explained, drawn }: Mislaid): string {
  const [{ hypothesis, tally }, ...others] = explained;
  const what = mishapInWords({ plug }, hypothesis);
  const { mishap } = hypothesis;
  if (sure === "by-colour" && mishap.is === "exchanged")
    return `the colours at cavities ${mishap.a} and ${mishap.b} of plug ${plug.id} stand exchanged: each has the wire that is drawn at the other.`;
  if (sure === "by-colour") {
    const seen = `the colours found at plug ${plug.id} fit the drawing if ${what} (${howSure(tally, drawn)})`;
    return others.length === 0
      ? `${seen}.`
      : `${seen}. They fit as well ${alsoFits(plug, others)}.`;
  }
  const fits = `what you measured fits the drawing if ${what} (${howSure(tally, drawn)})`;
  if (sure === "faults-untried")
    return `${fits}. Whether one fault could show the same is not worked out.`;
  if (sure === "or-a-fault") return `${fits}. One fault could show the same readings.`;
  return others.length === 0
    ? `${fits}. Too little was read to be sure.`
    : `${fits}. It fits as well ${alsoFits(plug, others)}.`;
}

function alsoFits(plug: Plug, others: readonly Explained[]): string {
  const also = others
    .slice(0, MOST_NAMED)
    .map((one) => `if ${mishapInWords({ plug }, one.hypothesis)}`);
  const more = others.length - also.length;
  const rest = more > 0 ? [`in ${more} more ${more === 1 ? "way" : "ways"}`] : [];
  return listAnd([...also, ...rest]);
}
