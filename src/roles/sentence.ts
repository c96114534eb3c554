import { type Cube, type Explorer, kindOf, positionsOfBits } from "../circuit/index.ts";
import { type Id, ownerOf, type Part } from "../job/index.ts";
import type { PinRole } from "./infer.ts";
import { listAnd, ROLE_IN_WORDS, rolesInWords } from "./role-names.ts";
import { isUntraced } from "./role-words.ts";

const TRACE_ON = "Trace it, or mark that it goes on and is not traced.";

/** Words before and behind the name of the place that a walk starts from. */
export type WalkWords = readonly [before: string, behind: string];

/** The walk from a pin to what decides its role, in sentences that a mechanic would say. */
export function walkInWords(explorer: Explorer, role: PinRole, ids: readonly Id[]): WalkWords {
  const { sight } = explorer;
  const chief = role.sightings[0];
  if (isUntraced(role))
    return ["No line is traced yet at ", ` of module ${ownerOf(role.pin)}: it may be anything.`];
  if (role.bounded)
    return ["From ", " there are more ways through the circuit than can be followed."];
  if (!chief)
    return sight.isWired(role.pin)
      ? ["The line from ", " leads to nothing."]
      : ["No wire is drawn at ", "."];
  const parts = ids.map((id) => sight.part(id)).filter((part) => part !== undefined);
  const last = parts.at(-1);
  const passed = parts.slice(0, -1);
  const isJoint = (part: Part) => part.kind === "splice" || part.kind === "inline";
  const working = !passed.every(isJoint);
  // Joints matter where nothing else is on the way; between fuses and switches they only tire.
  const between = passed
    .filter((part) => !working || part.kind !== "splice")
    .map((part) => partInWords(explorer, part, chief.cube));
  const through = between.length > 0 ? ` through ${listAnd(between)}` : "";
  const straight = working ? "" : " straight";
  const clear = !working && last ? " Nothing on the way." : "";
  return ["From ", ` the line runs${through}${straight} to ${endInWords(last)}.${clear}`];
}

/** The walk named from where it starts, and what follows from it. */
export function pinSentence(
  [before, behind]: WalkWords,
  role: Pick<PinRole, "fits" | "side">,
  from: string,
  word: { readonly text: string | null; readonly contradicted: boolean },
): string {
  const said = `${before}${from}${behind}`;
  if (isUntraced(role)) return word.text === null ? said : `${said} The diagram says ${word.text}.`;
  return `${said} ${conclusion(role, word)}`;
}

function endInWords(part: Part | undefined): string {
  if (!part) return "a dead end";
  switch (part.kind) {
    case "battery":
      return `battery ${part.id}`;
    case "ground":
      return part.place && part.place !== "frame" ? `ground on the ${part.place}` : "chassis";
    case "module":
      return `module ${part.label ?? part.id}`;
    case "offpage":
      return part.is
        ? `what lies beyond ${part.id}, ${ROLE_IN_WORDS[part.is]}`
        : `${part.id}, where it goes on and is not traced`;
    default:
      return nameOf(part);
  }
}

const nameOf = (part: Part): string => `${kindOf(part.kind).title} ${part.id}`;

function partInWords(explorer: Explorer, part: Part, cube: Cube): string {
  if (part.kind !== "switch") return nameOf(part);
  const kind = part.control === "operator" ? "switch" : `${part.control.replace("-", " ")} switch`;
  for (let i = 0; i < cube.length; i += 2) {
    const variable = explorer.variables.at(cube[i] as number);
    if (variable.is !== "switch" || variable.part.id !== part.id) continue;
    return `${kind} ${part.id} (${positionsOfBits(part, cube[i + 1] as number).join(", ")})`;
  }
  return `${kind} ${part.id}`;
}

function conclusion(
  role: Pick<PinRole, "fits" | "side">,
  word: { readonly text: string | null; readonly contradicted: boolean },
): string {
  const what =
    role.fits.length === 1
      ? `That is ${rolesInWords(role.fits)}`
      : `That can be ${rolesInWords(role.fits)}`;
  const side = role.side && role.fits.length === 1 ? ` (${sideInWords(role)})` : "";
  if (word.text === null) return `${what}${side}.`;
  // While somebody is still tracing, a word beside a bare pin asks for its wire.
  const advice = role.fits[0] === "unused" ? ` ${TRACE_ON}` : "";
  return word.contradicted
    ? `${what}${side}, and the diagram calls it ${word.text}.${advice}`
    : `${what}${side}; the diagram says ${word.text}.`;
}

const sideInWords = (role: Pick<PinRole, "fits" | "side">): string =>
  role.fits[0] === "input"
    ? role.side === "high"
      ? "switched to supply"
      : "switched to ground"
    : role.side === "high"
      ? "feeds its load"
      : "grounds its load";
