import { freeId, type Id, idsOf, type Job, type Recording, type Step } from "../../job/index.ts";
import type { Session } from "../session.ts";
import { putAside, showOperate } from "./operate.ts";
import type { PlayedStep } from "./operate-state.ts";

export const recordingsOf = (job: Job, machine: Id): readonly Recording[] =>
  job.machines.find((one) => one.id === machine)?.recordings ?? NONE;

const NONE: readonly Recording[] = [];

/** A wait in which more than this happens by itself is not made any longer. */
const MOST_EVENTS = 200;

/** Waits in a row as one, with all that happened in them. */
export function joinWaits(played: readonly PlayedStep[]): readonly PlayedStep[] {
  const joined: PlayedStep[] = [];
  for (const one of played) {
    const last = joined.at(-1);
    const events = [...(last?.outcome?.events ?? []), ...(one.outcome?.events ?? [])];
    if (last?.step.do === "wait" && one.step.do === "wait" && events.length <= MOST_EVENTS) {
      const seconds = roundSeconds(last.step.seconds + one.step.seconds);
      const outcome = one.outcome && { ...one.outcome, events };
      joined[joined.length - 1] = { step: { do: "wait", seconds }, outcome };
    } else joined.push(one);
  }
  return joined;
}

/** Tenths of milliseconds: what a clock adds beyond is noise. */
export const roundSeconds = (seconds: number): number => Math.round(seconds * 1e4) / 1e4;

/** What is worth keeping of a play: the steps that could be done. */
export function stepsToKeep(played: readonly PlayedStep[]): readonly Step[] {
  const done = played.filter(({ outcome }) => outcome === null || outcome.refused === null);
  return joinWaits(done).map(({ step }) => step);
}

/** Keeps what was done under a name, with the machine at hand, as one edit. */
export function keepRecording(session: Session, name: string): void {
  const { machine, operate } = session.get();
  const steps = stepsToKeep(operate.played);
  if (steps.length === 0) return;
  session.edit(`Keep the steps “${name}”`, (draft) => {
    const owner = draft.machines.find((one) => one.id === machine);
    if (!owner) return;
    const id = freeId(idsOf(draft), "recording");
    owner.recordings = [...(owner.recordings ?? []), { id, name, steps: [...steps] }];
  });
}

export function renameRecording(session: Session, id: Id, name: string): void {
  const { machine } = session.get();
  session.edit(`Rename the steps “${name}”`, (draft) => {
    const owner = draft.machines.find((one) => one.id === machine);
    const recording = owner?.recordings?.find((one) => one.id === id);
    if (recording) recording.name = name;
  });
}

export function removeRecording(session: Session, id: Id): void {
  const { job, machine, operate } = session.get();
  const name = recordingsOf(job, machine).find((one) => one.id === id)?.name;
  if (name === undefined) return;
  session.edit(`Delete the steps “${name}”`, (draft) => {
    const owner = draft.machines.find((one) => one.id === machine);
    if (!owner?.recordings) return;
    owner.recordings = owner.recordings.filter((one) => one.id !== id);
    if (owner.recordings.length === 0) delete owner.recordings;
  });
  if (operate.replay?.recording === id) endReplay(session);
}

/** Takes a recording up at its beginning, from rest. */
export function beginReplay(session: Session, id: Id): void {
  const { job, machine, operate } = session.get();
  const recording = recordingsOf(job, machine).find((one) => one.id === id);
  if (!recording) return;
  const { name, steps } = recording;
  showOperate(session, {
    on: true,
    setAside: putAside(operate),
    played: [],
    live: null,
    failed: null,
    replay: { recording: id, name, steps, runs: false },
  });
}

/** Does the next step of the recording; nothing when all are done. */
export function nextReplayStep(session: Session): void {
  const { replay, played } = session.get().operate;
  const step = replay?.steps[played.length];
  if (step) showOperate(session, { played: [...played, { step, outcome: null }] });
}

/** Goes to the state after so many of the recording's steps. */
export function replayTo(session: Session, count: number): void {
  const { replay, played } = session.get().operate;
  if (!replay) return;
  const steps = replay.steps.slice(0, count);
  const done = played.slice(0, count);
  showOperate(session, {
    played: steps.map((step, index) => done[index] ?? { step, outcome: null }),
    replay: { ...replay, runs: false },
  });
}

/** Lets the recording run through, or holds it. From its end it begins again. */
export function runReplay(session: Session, runs: boolean): void {
  const { replay, played } = session.get().operate;
  if (!replay) return;
  const over = played.length >= replay.steps.length;
  showOperate(session, {
    replay: { ...replay, runs },
    ...(runs && over ? { played: [], live: null } : {}),
  });
}

/** Leaves the recording; the machine stays as it is and can be operated on by hand. */
export function endReplay(session: Session): void {
  showOperate(session, { replay: null });
}
