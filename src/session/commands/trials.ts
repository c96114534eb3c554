import { beginTrial } from "../trials/index.ts";
import type { Command } from "./command.ts";

export const TRIAL_COMMANDS: readonly Command[] = [
  {
    id: "try",
    label: "Try something",
    keys: ["Y"],
    canRun: (session) => session.get().machine !== "",
    run: beginTrial,
  },
];
