import type { Control, Id, PinId } from "../../job/index.ts";
import { springPositions } from "../kinds/index.ts";
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

/** An isolator is taken as closed and commands nothing. */
const COMMAND_OF: Readonly<Record<Exclude<Control, "isolator">, Command>> = {
  key: "key",
  "emergency-stop": "key",
  interlock: "interlock",
  operator: "event",
  limit: "event",
  pressure: "event",
  temperature: "event",
  level: "event",
};

/** What a condition asks for: switches as commands, and what has to be followed further. */
export interface Commanders {
  readonly commands: ReadonlySet<Command>;
  /** Relays whose state is a variable of its own. */
  readonly relays: readonly Id[];
  /** Pins of the judged module that are driven for it. */
  readonly ownPins: readonly PinId[];
}

function springBits(variable: Variable & { is: "switch" }): number {
  const { part } = variable;
  const positions = springPositions(part);
  return positions.length === 0 ? 0 : positionBits(part, positions);
}

/** What a condition asks for at first hand. */
export function commandersOf(cube: Cube, variables: Variables): Commanders {
  const commands = new Set<Command>();
  const relays: Id[] = [];
  const ownPins: PinId[] = [];
  for (let i = 0; i < cube.length; i += 2) {
    const variable = variables.at(cube[i] as number);
    const bits = cube[i + 1] as number;
    switch (variable.is) {
      case "switch": {
        const { control } = variable.part;
        if (control === "isolator") break;
        const command = COMMAND_OF[control];
        const springs = command === "key" && (bits & ~springBits(variable)) === 0;
        commands.add(springs ? "spring-key" : command);
        break;
      }
      case "relay":
        relays.push(variable.part);
        break;
      case "own-pin":
        ownPins.push(variable.pin);
        break;
      default:
        commands.add("key");
    }
  }
  return { commands, relays, ownPins };
}

/** True where nothing but key and emergency stop commands: a feed of the machine, live or not. */
export const isPlainFeed = (commands: ReadonlySet<Command>): boolean =>
  [...commands].every((command) => command === "key");
