import { kindOf } from "../../circuit/index.ts";
import type { Id, Part, Trial, When } from "../../job/index.ts";
import { stepsTo, type TrialOutcome } from "../../readings/index.ts";
import { onWords, secondsWords, stepWords } from "../play/play-words.ts";
import type { Beside } from "./trial-beside.ts";

/** What is done, in the order in which it is done: `Unplug A1`, `S1 to run`. */
export const doneInWords = (when: When): readonly string[] => [
  ...stepsTo(when).map(stepWords),
  ...(when.standIn === undefined ? [] : [`Stand-in ${when.standIn} fitted`]),
];

/** `relay K1 starter relay`; the id alone of a part that is gone. */
export const partInWords = (id: Id, part: Part | undefined): string =>
  part ? [kindOf(part.kind).title, id, part.label].filter(Boolean).join(" ") : id;

/** What one sees of a part that is on, and of one that is off: `lit`, `dark`. */
export const seenWords = (part: Part | undefined): readonly [on: string, off: string] =>
  part ? onWords(part.kind) : ["on", "off"];

/** One line of what a trial will do, to be read before it is done. */
export interface Ahead {
  /** `will`: moves for sure as drawn; `may`: nobody can tell. */
  readonly how: "will" | "may";
  /** What is said before the names, e.g. `Will move or come on`. */
  readonly lead: string;
  readonly names: readonly string[];
}

/** All that a trial sets in motion or lets go, the gravest first; nothing where nothing moves. */
export function aheadInWords(
  { brings, later, drops, may, blows }: TrialOutcome,
  parts: ReadonlyMap<Id, Part>,
): readonly Ahead[] {
  const named = (ids: readonly Id[]) => ids.map((id) => partInWords(id, parts.get(id)));
  const timed = later.map(
    ({ id, seconds }) => `${partInWords(id, parts.get(id))} after ${secondsWords(seconds)}`,
  );
  const lines: Ahead[] = [
    { how: "will", lead: "Will move or come on", names: named(brings) },
    { how: "will", lead: "Then comes on by itself", names: timed },
    { how: "will", lead: "Goes off, and lets go of what it holds", names: named(drops) },
    { how: "will", lead: "Blows", names: named(blows) },
    { how: "may", lead: "May move or come on, nobody has said", names: named(may) },
  ];
  return lines.filter(({ names }) => names.length > 0);
}

/** What was seen of one part, and what the circuit as drawn does with it: a hint and no verdict. */
export function besideInWords({ part, saw, drawn, verdict }: Beside, of: Part | undefined): string {
  const [on, off] = seenWords(of);
  const seen = saw === "on" ? on : off;
  if (verdict === "agrees") return `${part} was ${seen}, as drawn.`;
  if (verdict === "differs")
    return `The circuit as drawn has ${part} ${saw === "on" ? off : on}; it was ${seen}.`;
  if (drawn === "changes")
    return `${part} was ${seen}; as drawn it comes and goes, or is still timed.`;
  return of
    ? `${part} was ${seen}; the circuit can’t tell what it should be.`
    : `${part} was ${seen}; it is not on this machine any more.`;
}

/** A trial in one line, for a list and for the undo step: `S1 to run, S2 to pressed`. */
export const trialTitle = ({ when }: Pick<Trial, "when">): string =>
  doneInWords(when).join(", ") || "Everything at rest";
