import type { Job } from "../../job/index.ts";
import { DIN_72552_ROLES } from "./din-72552.ts";
import { ENGLISH } from "./english.ts";
import { type Meaning, means } from "./meaning.ts";

/** Up to this many volts a stated voltage is a sensor's supply and not the machine's. */
const HIGHEST_REFERENCE_VOLTS = 10;
const LONGEST_PHRASE = 3;

const TABLES = [ENGLISH, DIN_72552_ROLES];

function lookUp(phrase: string): readonly Meaning[] | null {
  for (const table of TABLES) {
    if (Object.hasOwn(table, phrase)) return table[phrase] ?? null;
  }
  // "LAMPS", "VALVES"
  return phrase.length > 3 && phrase.endsWith("S") ? lookUp(phrase.slice(0, -1)) : null;
}

/**
 * Splits a printed word into tokens, upper case: words with a sign that belongs to them (`B+`),
 * terminal numbers (`31b`), voltages as `<V>` or `<REF>`, lone signs.
 */
export function tokensOf(printed: string): readonly string[] {
  const text = printed
    .toUpperCase()
    .replace(/[−–—]/g, "-")
    // A hyphen between words is no minus sign.
    .replace(/([A-Z\d])-(?=[A-Z\d])/g, "$1 ")
    .replace(/\s-\s+(?=\S)/g, " ")
    .replace(/\bN\s*[/.]\s*C\b\.?/g, "NC")
    .replace(/\b(\d+(?:[.,]\d+)?)\s*(?:VDC|VOLTS?|V)\b/g, "$1V");
  const found = text.match(
    /[+-]?\d+(?:[.,]\d+)?V[+-]?|[+-]\d+(?:[.,]\d+)?|\d+[A-Z]?(?![A-Z])|[A-Z]+[+-](?![A-Z\d])|[A-Z]+|[+-]/g,
  );
  return (found ?? []).map(asVoltage);
}

function asVoltage(token: string): string {
  const match = /^([+-]?)(\d+(?:[.,]\d+)?)(V?)([+-]?)$/.exec(token);
  if (!match) return token;
  const [, sign, digits = "", unit, tail] = match;
  if (unit === "" && sign === "" && tail === "") return token;
  const volts = Number(digits.replace(",", "."));
  if (volts === 0) return "0V";
  if (sign === "-" || tail === "-") return "-";
  return volts <= HIGHEST_REFERENCE_VOLTS ? "<REF>" : "<V>";
}

/**
 * What a word printed beside a pin may mean; empty where nothing in it is known. The longest known
 * phrase counts first. Several phrases in one word ("PUMP OUT") narrow one another down where they
 * agree on something; otherwise the word keeps all their meanings.
 */
export function readWord(printed: string, taught: Job["words"] = []): readonly Meaning[] {
  const wanted = printed.trim().toUpperCase();
  const lesson = taught?.find((one) => one.printed.trim().toUpperCase() === wanted);
  if (lesson) return means(lesson.role);
  let found = known.get(printed);
  if (!found) {
    found = meaningsIn(tokensOf(printed));
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(printed, found);
  }
  return found;
}

/** The same few words stand beside most pins of a machine. */
const known = new Map<string, readonly Meaning[]>();
const MOST_KNOWN = 5000;

function meaningsIn(tokens: readonly string[]): readonly Meaning[] {
  const groups: (readonly Meaning[])[] = [];
  for (let at = 0; at < tokens.length; ) {
    let used = 1;
    for (let length = Math.min(LONGEST_PHRASE, tokens.length - at); length >= 1; length--) {
      const found = lookUp(tokens.slice(at, at + length).join(" "));
      if (!found) continue;
      groups.push(found);
      used = length;
      break;
    }
    at += used;
  }
  return narrow(groups);
}

function narrow(groups: readonly (readonly Meaning[])[]): readonly Meaning[] {
  let kept = groups[0] ?? [];
  for (const group of groups.slice(1)) {
    const common = kept
      .filter((one) => group.some((other) => agree(one, other)))
      .map((one) => ({ ...one, side: one.side ?? sideIn(group, one) }));
    kept =
      common.length > 0
        ? common
        : [...kept, ...group.filter((one) => !kept.some((other) => agree(one, other)))];
  }
  return kept;
}

const agree = (a: Meaning, b: Meaning) =>
  a.role === b.role && (a.side === null || b.side === null || a.side === b.side);

const sideIn = (group: readonly Meaning[], like: Meaning) =>
  group.find((one) => one.role === like.role)?.side ?? null;
