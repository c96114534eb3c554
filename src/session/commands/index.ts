import { CHANGE_COMMANDS } from "./changes.ts";
import type { Command } from "./command.ts";
import { DIAGRAM_COMMANDS } from "./diagram.ts";
import { DOCUMENT_COMMANDS } from "./document.ts";
import { OPERATE_COMMANDS, whileEditing } from "./operate.ts";
import { PARTS_COMMANDS } from "./parts.ts";
import { SCAN_COMMANDS } from "./scan.ts";
import { TRIAL_COMMANDS } from "./trials.ts";
import { VIEW_COMMANDS } from "./view.ts";

export * from "./command.ts";

/** Commands of the diagram that only look at it. */
const LOOKING = /^zoom-/;

/** Everything that can be done without a screen, in the order in which a menu lists it. */
export const COMMANDS: readonly Command[] = [
  ...DOCUMENT_COMMANDS,
  ...DIAGRAM_COMMANDS.map((one) => (LOOKING.test(one.id) ? one : whileEditing(one))),
  ...SCAN_COMMANDS.map(whileEditing),
  ...PARTS_COMMANDS.map(whileEditing),
  ...CHANGE_COMMANDS.map(whileEditing),
  ...TRIAL_COMMANDS,
  ...OPERATE_COMMANDS,
  ...VIEW_COMMANDS,
];

export function commandNamed(id: string): Command {
  const found = COMMANDS.find((command) => command.id === id);
  if (!found) throw new Error(`no such command: ${id}`);
  return found;
}
