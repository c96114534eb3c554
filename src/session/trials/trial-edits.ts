import type { Id, Job, Trial } from "../../job/index.ts";
import { stopOperating } from "../play/index.ts";
import type { Session } from "../session.ts";
import { newTrial } from "./trial-draft.ts";

/** Goes to where trials are; one begun is gone on with. */
export function beginTrial(session: Session): void {
  const { machine, trial, operate } = session.get();
  // its panel stands where the operating has its own
  if (operate.on) stopOperating(session);
  session.show({ station: "prove", trial: trial ?? newTrial(machine) });
}

/** Keeps a trial in a draft of the job: a new one at the end, a mended one in its old place. */
export function keepTrial(draft: Job, machine: Id, trial: Trial): void {
  const own = draft.machines.find((one) => one.id === machine);
  if (!own) throw new Error(`no such machine: ${machine}`);
  const place = own.trials.findIndex((one) => one.id === trial.id);
  if (place < 0) {
    own.trials.push(trial);
    return;
  }
  // fields that this version does not know stay, a note that was emptied goes
  const { note: _, ...before } = own.trials[place] as Trial;
  own.trials[place] = { ...before, ...trial };
}

/** Takes one trial away again. */
export function dropTrial(draft: Job, machine: Id, trial: Id): void {
  const own = draft.machines.find((one) => one.id === machine);
  if (own) own.trials = own.trials.filter(({ id }) => id !== trial);
}
