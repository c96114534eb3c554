import { drawnOf } from "../changes/index.ts";
import { link, proposeByMarks, unlink } from "../match.ts";
import { moduleAtHand } from "../match-at-hand.ts";
import type { Session } from "../session.ts";
import type { Command } from "./command.ts";

function proposals(session: Session) {
  const { plug } = session.get();
  const module = moduleAtHand(session.get());
  return module && plug ? proposeByMarks(drawnOf(session.get()), module, plug) : [];
}

const tied = (session: Session): readonly string[] => {
  const { job, selection } = session.get();
  return selection.filter((ref) => job.links.some((one) => one.pin === ref || one.cavity === ref));
};

/** Says what it acted on: a finger has no hover that could have told before. */
function step(session: Session, said: string, list: "done" | "undone", move: () => void): void {
  const label = session.get().history[list].at(-1)?.label;
  move();
  if (label) session.show({ notice: { tone: "info", text: `${said}: ${label}` } });
}

export const DOCUMENT_COMMANDS: readonly Command[] = [
  {
    id: "undo",
    label: "Undo",
    keys: ["Mod+Z"],
    detail: (session) => session.get().history.done.at(-1)?.label ?? null,
    canRun: (session) => session.get().history.done.length > 0,
    run: (session) => step(session, "Took back", "done", session.undo),
  },
  {
    id: "redo",
    label: "Redo",
    keys: ["Mod+Shift+Z", "Mod+Y"],
    detail: (session) => session.get().history.undone.at(-1)?.label ?? null,
    canRun: (session) => session.get().history.undone.length > 0,
    run: (session) => step(session, "Did again", "undone", session.redo),
  },
  {
    id: "match-by-marks",
    label: "Match by equal marks",
    detail: (session) => {
      const count = proposals(session).length;
      return count === 0 ? null : `${count} to tie`;
    },
    canRun: (session) => proposals(session).length > 0,
    run: (session) => {
      const links = proposals(session);
      session.edit(`Match ${links.length} by equal marks`, (draft) => {
        for (const one of links) link(draft, one.pin, one.cavity);
      });
    },
  },
  {
    id: "untie",
    label: "Untie",
    detail: (session) => tied(session).join(", ") || null,
    canRun: (session) => tied(session).length > 0,
    run: (session) => {
      const refs = tied(session);
      session.edit(`Untie ${refs.join(", ")}`, (draft) => {
        for (const ref of refs) unlink(draft, ref);
      });
    },
  },
];
