import type { Id, Job } from "../../job/index.ts";
import { changesOf } from "./drawn-job.ts";

/** While it lasts, what is drawn and taken out goes into a change of one machine. */
export interface Recording {
  readonly machine: Id;
  /** Place in the machine's list of changes; one past its end before anything was drawn. */
  readonly change: number;
  readonly note: string;
}

/** The recording while what it writes to is still there (undo, another machine may end it). */
export function keptRecording(
  recording: Recording | null,
  job: Job,
  machine: Id,
): Recording | null {
  if (recording === null || recording.machine !== machine) return null;
  const changes = changesOf(job, machine);
  const { change, note } = recording;
  if (change > changes.length) return null;
  return change === changes.length || changes[change]?.note === note ? recording : null;
}

/** A new change of a machine, begun with the first thing drawn. */
export const newRecording = (job: Job, machine: Id, note: string): Recording => ({
  machine,
  change: changesOf(job, machine).length,
  note,
});

/** Goes on with a change that is there; null when there is none at that place. */
export function goOnRecording(job: Job, machine: Id, change: number): Recording | null {
  const note = changesOf(job, machine)[change]?.note;
  return note === undefined ? null : { machine, change, note };
}
