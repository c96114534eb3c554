import type { RoleName } from "../job/index.ts";

/** What a mechanic calls each role, with its article. */
export const ROLE_IN_WORDS: Readonly<Record<RoleName, string>> = {
  supply: "a permanent feed",
  "switched-supply": "a switched feed",
  ground: "a ground",
  "switched-ground": "a switched ground",
  input: "an input",
  output: "an output",
  "sensor-supply": "a sensor's supply",
  "sensor-ground": "a sensor's ground",
  signal: "a line to another module",
  unused: "not used",
};

/** "A solid way" of "a solid way". */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a, b or c" */
export function listOr(things: readonly string[]): string {
  if (things.length <= 1) return things[0] ?? "";
  return `${things.slice(0, -1).join(", ")} or ${things.at(-1)}`;
}

/** "a, b and c" */
export function listAnd(things: readonly string[]): string {
  if (things.length <= 1) return things[0] ?? "";
  return `${things.slice(0, -1).join(", ")} and ${things.at(-1)}`;
}

export const rolesInWords = (roles: readonly RoleName[]): string =>
  listOr(roles.map((role) => ROLE_IN_WORDS[role]));
