import { COMMANDS, type Command, matchables, newDraft } from "../../session/index.ts";
import { beginReading } from "../panels/unfinished.ts";
import type { JobDesk } from "./job-desk.ts";
import { openPicked } from "./open-picked.ts";

/** The commands of the session, and those that need a browser: files in and out. */
export function appCommands(desk: JobDesk): readonly Command[] {
  const always = () => true;
  return [
    ...COMMANDS,
    {
      id: "enter-reading",
      label: "Enter a reading",
      keys: ["E"],
      canRun: (session) => session.get().draft === null,
      run: (session) => {
        const { job, selection } = session.get();
        const { cavities } = matchables(job);
        beginReading(session, newDraft(selection.find((ref) => cavities.has(ref)) ?? null));
      },
    },
    {
      id: "new-job",
      label: "New job",
      canRun: always,
      run: () => void desk.create(),
    },
    {
      id: "open-file",
      label: "Open a file",
      keys: ["Mod+O"],
      whileTyping: true,
      canRun: always,
      run: () => void openPicked(desk),
    },
    {
      id: "save-file",
      label: "Save to a file",
      keys: ["Mod+S"],
      whileTyping: true,
      canRun: always,
      run: () => void desk.save(),
    },
    {
      id: "save-file-as",
      label: "Save to another file",
      keys: ["Mod+Shift+S"],
      whileTyping: true,
      canRun: always,
      run: () => void desk.saveAs(".pintruth"),
    },
  ];
}
