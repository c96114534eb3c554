import { COMMANDS, type Command } from "../../session/index.ts";
import type { JobDesk } from "./job-desk.ts";
import { openPicked } from "./open-picked.ts";

/** The commands of the session, and those that need a browser: files in and out. */
export function appCommands(desk: JobDesk): readonly Command[] {
  const always = () => true;
  return [
    ...COMMANDS,
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
