import { type Cube, type Explorer, kindOf, positionsOfBits } from "../circuit/index.ts";
import type { Id, Part } from "../job/index.ts";
import type { PinRole } from "./infer.ts";
import { listAnd, ROLE_IN_WORDS, rolesInWords } from "./role-names.ts";

/** The walk from a pin to what decides its role, in sentences that a mechanic would say. */
export function pinSentence(
  explorer: Explorer,
  role: PinRole,
  ids: readonly Id[],
  from: string,
  word: { readonly text: string | null; readonly contradicted: boolean },
): string {
  return [...walk(explorer, role, ids, from), conclusion(role, word)].join(" ");
}

function walk(
  explorer: Explorer,
  role: PinRole,
  ids: readonly Id[],
  from: string,
): readonly string[] {
  const { network } = explorer;
  const chief = role.sightings[0];
  if (role.bounded)
    return [`From ${from} there are more ways through the circuit than can be followed.`];
  if (!chief) {
    const wired = (network.hops.get(role.pin)?.length ?? 0) > 0;
    return [wired ? `The line from ${from} leads to nothing.` : `Nothing is wired to ${from}.`];
  }
  const parts = ids.map((id) => network.parts.get(id)).filter((part) => part !== undefined);
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
  const sentences = [`From ${from} the line runs${through}${straight} to ${endInWords(last)}.`];
  if (!working && last) sentences.push("Nothing on the way.");
  return sentences;
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
  role: PinRole,
  word: { readonly text: string | null; readonly contradicted: boolean },
): string {
  const what =
    role.fits.length === 1
      ? `That is ${rolesInWords(role.fits)}`
      : `That can be ${rolesInWords(role.fits)}`;
  const side = role.side && role.fits.length === 1 ? ` (${sideInWords(role)})` : "";
  if (word.text === null) return `${what}${side}.`;
  return word.contradicted
    ? `${what}${side}, and the diagram calls it ${word.text}.`
    : `${what}${side}; the diagram says ${word.text}.`;
}

const sideInWords = (role: PinRole): string =>
  role.fits[0] === "input"
    ? role.side === "high"
      ? "switched to supply"
      : "switched to ground"
    : role.side === "high"
      ? "feeds its load"
      : "grounds its load";
