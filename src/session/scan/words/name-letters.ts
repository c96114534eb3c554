import { KINDS, kindOf } from "../../../circuit/index.ts";
import type { Id, PartKindName } from "../../../job/index.ts";
import { listOr } from "../../../roles/index.ts";

/**
 * Letters that printed names of a kind begin with beside its own in IEC 81346-2:2009: those of the older
 * IEC 60750 (from memory), and what is common practice on machines' diagrams (no source).
 */
const OTHERS: Readonly<Record<PartKindName, readonly string[]>> = {
  battery: ["B", "BT"],
  ground: ["E", "G"],
  fuse: [],
  breaker: ["F", "CB"],
  switch: ["B", "PB", "PS", "Q", "TS"],
  relay: ["CR", "Q", "R", "RL"],
  module: ["K", "T", "U"],
  lamp: ["E", "H"],
  solenoid: ["K", "SV", "V"],
  motor: [],
  heater: ["R"],
  horn: ["B", "H"],
  resistor: [],
  sender: ["R"],
  potentiometer: ["B", "S"],
  sensor: ["S"],
  alternator: [],
  converter: ["U"],
  diode: ["CR", "V"],
  splice: ["S", "SP"],
  inline: ["C", "P"],
  offpage: [],
};

/** Two letters that mean more than the first alone: `SP3` is a splice, and no switch. */
const PAIRS: ReadonlySet<string> = new Set(
  Object.values(OTHERS).flatMap((letters) => letters.filter(({ length }) => length === 2)),
);

/** What of a name tells its kind. */
function lettersOf(name: Id): string {
  const letters = /^[A-Z]*/.exec(name)?.[0] ?? "";
  const pair = letters.slice(0, 2);
  return PAIRS.has(pair) ? pair : letters.slice(0, 1);
}

const ownLetters = (kind: PartKindName): readonly string[] => [
  kindOf(kind).letter,
  ...OTHERS[kind].filter(({ length }) => length === 2),
];

/** Whether a name begins as IEC 81346-2 has it for a kind, or with two letters that are its own. */
export const isOwnName = (kind: PartKindName, name: Id): boolean =>
  ownLetters(kind).includes(lettersOf(name));

/** Whether a name begins as none of this kind does: as those of another one, or of none. */
export const isOddName = (kind: PartKindName, name: Id): boolean =>
  !isOwnName(kind, name) && !OTHERS[kind].includes(lettersOf(name));

/** Why a name is hardly that of a part of a kind, in a sentence. */
export function sayOddName(kind: PartKindName, name: Id): string {
  const letters = lettersOf(name);
  const { title } = kindOf(kind);
  const owners = Object.values(KINDS)
    // Where a line goes on the sheet has a label of its own.
    .filter((one) => one.kind !== "offpage" && ownLetters(one.kind).includes(letters))
    .map((one) => withArticle(one.title));
  return owners.length === 0
    ? `A name that begins with ${letters} is not usual for ${withArticle(title)}.`
    : `It looks like the name of ${listOr(owners)}, and this is ${withArticle(title)}.`;
}

const withArticle = (title: string) => `${/^[aeiou]/.test(title) ? "an" : "a"} ${title}`;
