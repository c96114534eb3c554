import { check } from "./check.ts";
import type { Command } from "./command.ts";
import { convert } from "./convert.ts";
import { netlist } from "./netlist.ts";
import { predict } from "./predict.ts";
import { sheet } from "./sheet.ts";
import { trace } from "./trace.ts";

export type { Call, Command } from "./command.ts";

/** Every command, in the order in which the help lists them. */
export const COMMANDS: readonly Command[] = [check, predict, sheet, trace, netlist, convert];
