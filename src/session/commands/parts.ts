import { ownerOf } from "../../job/index.ts";
import { partsDeskOf } from "../scan/part-proposals.ts";
import type { Session } from "../session.ts";
import type { Command } from "./command.ts";
import { hasPicture } from "./scan.ts";

/** The one chosen part, where it lies on the picture of the sheet at hand; null where nothing such is chosen. */
function chosenPart(session: Session): string | null {
  const { selection, job, sheet } = session.get();
  const owner = selection[0] === undefined ? null : ownerOf(selection[0]);
  const part = job.diagram.parts.find(({ id }) => id === owner);
  return part?.sheet === sheet && part.kind !== "splice" ? part.id : null;
}

export const PARTS_COMMANDS: readonly Command[] = [
  {
    id: "find-parts",
    label: "Find parts",
    canRun: (session) => hasPicture(session) && partsDeskOf(session) !== null,
    run: (session) => {
      session.show({ scanDesk: true });
      void partsDeskOf(session)?.find();
    },
  },
  {
    id: "find-more-like",
    label: "Find more like this",
    detail: chosenPart,
    canRun: (session) =>
      hasPicture(session) && partsDeskOf(session) !== null && chosenPart(session) !== null,
    run: (session) => {
      const part = chosenPart(session);
      if (part === null) return;
      session.show({ scanDesk: true });
      void partsDeskOf(session)?.findMoreLike(part);
    },
  },
];
