import type { Control } from "../../job/index.ts";
import type { Cube } from "./conditions.ts";
import { positionBits, type Variable, type Variables } from "./variables.ts";

/** How a path is commanded, as far as the role of its far end depends on it. */
export type Command =
  /** Key or emergency stop: what a feed may well pass. */
  | "key"
  /** A key position that does not stay by itself. */
  | "spring-key"
  | "interlock"
  /** Operator, limit, pressure, temperature, level: something to be told about. */
  | "event"
  /** Another module, or something not traced. */
  | "unknown";

const COMMAND_OF: Readonly<Record<Control, Command>> = {
  key: "key",
  "emergency-stop": "key",
  isolator: "key",
  interlock: "interlock",
  operator: "event",
  limit: "event",
  pressure: "event",
  temperature: "event",
  level: "event",
};

/** Commands behind a relay whose state is a variable of its own. */
export type RelayCommands = (relay: string) => ReadonlySet<Command>;

function springBits(variable: Variable & { is: "switch" }): number {
  const { part } = variable;
  if (part.springReturn === undefined || part.springReturn === false) return 0;
  if (part.springReturn !== true) return positionBits(part, part.springReturn);
  const rest = part.rest ?? part.positions[0];
  return positionBits(
    part,
    part.positions.filter((position) => position !== rest),
  );
}

/** What commands a path of this condition; empty: nothing, or the judged module itself. */
export function commandsOf(
  cube: Cube,
  variables: Variables,
  relayCommands: RelayCommands,
): ReadonlySet<Command> {
  const commands = new Set<Command>();
  for (let i = 0; i < cube.length; i += 2) {
    const variable = variables.at(cube[i] as number);
    const bits = cube[i + 1] as number;
    switch (variable.is) {
      case "switch": {
        const command = COMMAND_OF[variable.part.control];
        const springs = command === "key" && (bits & ~springBits(variable)) === 0;
        commands.add(springs ? "spring-key" : command);
        break;
      }
      case "relay":
        for (const command of relayCommands(variable.part)) commands.add(command);
        break;
      case "own-pin":
        break;
      default:
        commands.add("key");
    }
  }
  return commands;
}

/** True where nothing but key and emergency stop commands: a feed of the machine, live or not. */
export const isPlainFeed = (commands: ReadonlySet<Command>): boolean =>
  [...commands].every((command) => command === "key");
