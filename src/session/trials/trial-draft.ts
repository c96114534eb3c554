import { freeId, type Id, idsOf, type Job, type Trial, type When } from "../../job/index.ts";
import { stepsTo } from "../../readings/index.ts";
import { tidyWhen } from "../reading-draft.ts";

/** A trial being set up and seen through on one machine. */
export interface TrialDraft {
  /** Id of the machine that it is done on: it is no trial of any other. */
  readonly machine: Id;
  readonly when: When;
  /** What was seen, by the id of the part; what nobody looked at is not in it. */
  readonly saw: Readonly<Record<Id, Seen>>;
  readonly note: string;
  /** Id of the stored trial that this takes the place of; absent for a new one. */
  readonly mends?: Id;
}

/** Something was set up or entered: the part that is lost hardest. */
export const isWorthGoingOn = ({ when, saw, note }: TrialDraft): boolean =>
  Object.keys(saw).length > 0 || note.trim() !== "" || stepsTo(tidyWhen(when)).length > 0;

export type Seen = Trial["saw"][number]["state"];

export const newTrial = (machine: Id): TrialDraft => ({ machine, when: {}, saw: {}, note: "" });

/** A stored trial to be mended, or to be done again: then nothing has been seen yet. */
export const trialAgain = (machine: Id, trial: Trial, mend: boolean): TrialDraft => ({
  ...newTrial(machine),
  when: trial.when,
  ...(mend
    ? {
        saw: Object.fromEntries(trial.saw.map(({ part, state }) => [part, state])),
        note: trial.note ?? "",
        mends: trial.id,
      }
    : {}),
});

/** Enters what was seen of one part; null: nobody looked at it. */
export function withSeen(draft: TrialDraft, part: Id, state: Seen | null): TrialDraft {
  const { [part]: _, ...others } = draft.saw;
  return { ...draft, saw: state === null ? others : { ...others, [part]: state } };
}

/** Why the draft cannot be kept yet, in a sentence; null when it can. */
export const trialLacks = ({ saw, note }: TrialDraft): string | null =>
  Object.keys(saw).length === 0 && note.trim() === ""
    ? "Enter what was seen: on or off, or a note."
    : null;

/** The trial that a complete draft stands for, with the first free id; null while something is lacking. */
export function trialOf(draft: TrialDraft, job: Job): Trial | null {
  if (trialLacks(draft) !== null) return null;
  return {
    id: draft.mends ?? freeId(idsOf(job), "T"),
    when: tidyWhen(draft.when),
    saw: Object.entries(draft.saw).map(([part, state]) => ({ part, state })),
    ...(draft.note.trim() === "" ? {} : { note: draft.note.trim() }),
  };
}
