import { changesOf, drawnOf, homesOf, replaceThing } from "../changes/index.ts";
import type { Session } from "../session.ts";
import type { Command } from "./command.ts";

/** The one chosen part or wire that did not come with the change being recorded; null otherwise. */
function replaceable(session: Session): string | null {
  const { job, machine, recording, selection } = session.get();
  const [id, another] = selection;
  if (!recording || id === undefined || another !== undefined) return null;
  const { parts, wires } = drawnOf(session.get()).diagram;
  const drawn = [...parts, ...wires].some((thing) => thing.id === id);
  const home = homesOf(changesOf(job, machine)).get(id) ?? -1;
  return drawn && home < recording.change ? id : null;
}

export const CHANGE_COMMANDS: readonly Command[] = [
  {
    id: "show-changes",
    label: "Retrofits, repairs and options",
    canRun: (session) => session.get().dialog !== "changes",
    run: (session) => session.show({ dialog: "changes" }),
  },
  {
    id: "record-change",
    label: "Record a change on this machine",
    canRun: (session) => session.get().recording === null && session.get().machine !== "",
    run: (session) => session.show({ dialog: "changes" }),
  },
  {
    id: "back-to-diagram",
    label: "Back to the diagram",
    canRun: (session) => session.get().recording !== null,
    run: (session) => session.show({ recording: null }),
  },
  {
    id: "replace-here",
    label: "Replace on this machine",
    detail: replaceable,
    canRun: (session) => replaceable(session) !== null,
    run: (session) => {
      const id = replaceable(session);
      if (id === null) return;
      let fresh: string | null = null;
      session.edit(`Replace ${id} on this machine`, (draft) => {
        fresh = replaceThing(draft, id);
      });
      if (fresh !== null) session.show({ selection: [fresh] });
    },
  },
];
