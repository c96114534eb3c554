import type { Id, Job } from "../../job/index.ts";
import { takeOut } from "../diagram/draft.ts";
import type { Session } from "../session.ts";
import { type Change, changesOf } from "./drawn-job.ts";

const draftChanges = (draft: Job, machine: Id): Change[] | undefined =>
  draft.machines.find(({ id }) => id === machine)?.changes;

/** Writes another note on a change of the machine at hand; a recording of it goes on. */
export function setChangeNote(
  session: Session,
  index: number,
  note: string,
  merge?: Parameters<Session["edit"]>[2],
): void {
  const { machine, recording } = session.get();
  session.edit(
    "Write the note of a change",
    (draft) => {
      const change = draftChanges(draft, machine)?.[index];
      if (change) change.note = note;
    },
    merge,
  );
  if (recording?.change === index) session.show({ recording: { ...recording, note } });
}

/** Takes a change of the machine at hand back whole: what it added goes, what it left out returns. */
export function takeBackChange(session: Session, index: number): void {
  const { job, machine, recording } = session.get();
  const change = changesOf(job, machine)[index];
  if (!change) return;
  session.edit(`Take back “${change.note}”`, (draft) => {
    const own = draft.machines.find(({ id }) => id === machine);
    own?.changes?.splice(index, 1);
    if (own?.changes?.length === 0) delete own.changes;
  });
  if (!recording || recording.change <= index) return;
  session.show({ recording: { ...recording, change: recording.change - 1 } });
}

/** Brings back one thing that a change of the machine at hand is without. */
export function putBack(session: Session, index: number, id: Id): void {
  const { machine } = session.get();
  session.edit(`Put ${id} back on this machine`, (draft) => {
    const change = draftChanges(draft, machine)?.[index];
    if (change?.without) takeOut(change.without, (one) => one === id);
  });
}
