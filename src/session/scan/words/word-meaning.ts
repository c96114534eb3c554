import type { Colour } from "../../../job/index.ts";
import { COLOUR_CODES, IEC_81346, readColours } from "../../../standards/index.ts";
import { digitsIn, lettersIn } from "./mix-ups.ts";

/** A printed value with its unit, in amperes, volts, watts or ohms. */
export interface Amount {
  readonly unit: "A" | "V" | "W" | "Ω";
  readonly value: number;
}

/** What is printed along a wire. */
export interface WirePrint {
  readonly number?: string;
  readonly colour?: Colour;
  readonly mm2?: number;
  readonly awg?: number;
}

/** What a printed text can be taken for. */
export type Meaning = (
  | { readonly is: "wire"; readonly print: WirePrint }
  /** A part's name, with the values that stand behind it. */
  | { readonly is: "name"; readonly id: string; readonly amounts: readonly Amount[] }
  | { readonly is: "amounts"; readonly amounts: readonly Amount[] }
  /** What is printed at a pin: a number or a letter. */
  | { readonly is: "mark"; readonly mark: string }
  | { readonly is: "words"; readonly text: string }
) & {
  /** Whether letters were put right that the reader mixes up, because only so it makes sense. */
  readonly mended: boolean;
};

/** Everything that a text can be taken for, the strictest first. Empty for what is no word. */
export function meaningsOf(text: string): readonly Meaning[] {
  const tidy = tidied(text);
  if (tidy === "") return [];
  const found: (Meaning | null)[] = [wireOf(tidy), nameOf(tidy), amountsMeant(tidy), markOf(tidy)];
  const words: Meaning | null = /[A-Za-z]{2}/.test(tidy)
    ? { is: "words", text: tidy, mended: false }
    : null;
  return [...found, words].filter((one) => one !== null);
}

/** Without dust at its ends and with single gaps; a sign right behind a letter stays, as in `D+`. */
export function tidied(text: string): string {
  const bare = text
    .replace(/\s+/g, " ")
    .replace(/^[^A-Za-z0-9(]+/, "")
    .trim();
  if (/^[A-Za-z0-9]{1,3}[+-]$/.test(bare)) return bare;
  return bare.replace(/[^A-Za-z0-9)²Ω]+$/, "");
}

/** What a wire's print may be, and how many letters had to be put right for that. */
interface PrintTry {
  readonly print: WirePrint;
  readonly mends: number;
}

function wireOf(text: string): Meaning | null {
  const upper = text.toUpperCase();
  const tries = [...numberedPrints(upper), ...plainPrints(upper)].filter((one) => one !== null);
  const [best] = tries.sort((a, b) => a.mends - b.mends);
  return best ? { is: "wire", print: best.print, mended: best.mends > 0 } : null;
}

/** `30-3 RD/WH`: two numbers with a hyphen, then what else is known. */
function numberedPrints(text: string): (PrintTry | null)[] {
  const close = text.replace(/ ?- ?/, "-");
  const head = /^([0-9OQDILSBZG]{1,3})-/.exec(close);
  const first = head && digitsIn(head[1] as string);
  if (!first) return [];
  const tail = close.slice(head[0].length);
  const gap = tail.indexOf(" ");
  // Readers often lose the gap behind the number: then every length of it is tried.
  const lengths = gap > 0 && gap <= 3 ? [gap] : [3, 2, 1];
  return lengths.map((length) => {
    const second = tail.length < length ? null : digitsIn(tail.slice(0, length));
    const rest = second && readRest(tail.slice(length));
    if (!second || !rest) return null;
    const number = `${first.text}-${second.text}`;
    return {
      print: { number, ...rest.print },
      mends: first.mends + second.mends + rest.mends,
    };
  });
}

/** `15 BK/RD`, `1.5 BK`, `RD/WH`, `12 AWG`, and a bare number. */
function plainPrints(text: string): (PrintTry | null)[] {
  const sized =
    /^(\d+[.,]\d+) ?(?:MM2|MM²)? ?(.*)$/.exec(text) ?? /^(\d+) ?MM[2²] ?(.*)$/.exec(text);
  if (sized) {
    const rest = readRest(sized[2] as string);
    const mm2 = Number((sized[1] as string).replace(",", "."));
    // Two figures with a point and nothing else may be anything.
    if (rest && (sized[2] !== "" || /MM/.test(text))) {
      return [{ print: { mm2, ...rest.print }, mends: rest.mends }];
    }
  }
  const whole = readRest(text);
  if (whole) return [whole];
  // 10A is a value rather than a number.
  const numbered = /^(\d{1,4}[B-UX-Z]?)(?: (.+))?$/.exec(text);
  const rest = numbered && readRest(numbered[2] ?? "");
  return [rest && { print: { number: numbered[1] as string, ...rest.print }, mends: rest.mends }];
}

/** Colour and size behind a wire's number; null when something is left that is neither. */
function readRest(text: string): PrintTry | null {
  const bare = text.replace(/^[ .,:;-]+|[ .,:;-]+$/g, "");
  if (bare === "") return { print: {}, mends: 0 };
  const gauge = /^(?:AWG ?(\d{1,2})|(\d{1,2}) ?AWG)$/.exec(bare);
  if (gauge) return { print: { awg: Number(gauge[1] ?? gauge[2]) }, mends: 0 };
  const size = /^(.*?)[ ,]*(\d+(?:[.,]\d+)?) ?MM[2²]?$/.exec(bare);
  if (size) {
    const before = readRest(size[1] as string);
    const mm2 = Number((size[2] as string).replace(",", "."));
    return before && { print: { ...before.print, mm2 }, mends: before.mends };
  }
  const [colour, ...others] = readColours(bare);
  if (colour && others.length === 0) return { print: { colour }, mends: 0 };
  const mended = others.length === 0 ? mendedColour(bare) : null;
  return mended;
}

/** A colour some of whose letters were mixed up or lost, where a single code of IEC 60757 can be meant. */
function mendedColour(text: string): PrintTry | null {
  const codes = text.includes("/")
    ? text.split("/")
    : (text.replaceAll(" ", "").match(/.{1,2}/g) ?? []);
  if (codes.length === 0 || codes.length > 2 || text.length < 2) return null;
  const [base, tracer] = codes.map((code) => {
    const meant = COLOUR_CODES.filter((one) => one.length === 2 && mayBeCode(code, one));
    return meant.length === 1 ? meant[0] : undefined;
  });
  if (!base || (codes.length === 2 && (!tracer || tracer === base))) return null;
  const mends = codes.filter((code, n) => code !== [base, tracer][n]).length;
  return { print: { colour: tracer ? { base, tracer } : { base } }, mends };
}

const mayBeCode = (read: string, code: string): boolean => {
  if (read.length === 1) return code[0] === read;
  return read === code || lettersIn(read)?.text === code;
};

const NAME = /^([A-Z0-9]{1,2}?)([0-9OQILSZBl]{1,3})([a-zA-Z]?)$/;

function nameOf(text: string): Meaning | null {
  const [first, ...more] = text.split(" ") as [string, ...string[]];
  const amounts = more.length > 0 ? amountsOf(more.join(" ")) : { list: [], mended: false };
  const found = amounts && namePart(first);
  if (!found) return null;
  return {
    is: "name",
    id: found.text,
    amounts: amounts.list,
    mended: found.mended || amounts.mended,
  };
}

function namePart(text: string): { readonly text: string; readonly mended: boolean } | null {
  const plain = /^([A-Z]{1,2})([1-9]\d{0,2})([a-z]?)$/.exec(text);
  if (plain && ((plain[1] as string)[0] as string) in IEC_81346) return { text, mended: false };
  const found = NAME.exec(text);
  if (!found) return null;
  const letters = lettersIn(found[1] as string);
  const digits = digitsIn(found[2] as string);
  if (!letters || !digits || digits.text.startsWith("0")) return null;
  // Letters only are rather a word, unless a 1 was taken for a letter.
  if (/^[A-Za-z]+$/.test(text) && !/^[A-Z][IlL]$/.test(text)) return null;
  if (!((letters.text[0] as string) in IEC_81346)) return null;
  if (/^\d\d/.test(text)) return null;
  return { text: `${letters.text}${digits.text}${found[3]?.toLowerCase() ?? ""}`, mended: true };
}

function amountsMeant(text: string): Meaning | null {
  const found = amountsOf(text);
  return found && { is: "amounts", amounts: found.list, mended: found.mended };
}

/** `60 A`, `24V 5W`, `7,5 A`, `24 V DC`; null when anything else is among it. */
function amountsOf(
  text: string,
): { readonly list: readonly Amount[]; readonly mended: boolean } | null {
  const list: Amount[] = [];
  let mended = false;
  let left = text.trim().replace(/ ?(?:DC|AC|=)$/i, "");
  while (left !== "") {
    const found =
      /^([0-9][0-9OQILSBZ]*(?:[.,][0-9OQILSBZ]+)?) ?(k|m)?(A|V|W|Ω|OHMS?|ohms?)(?:[ ,/;]+|$)/.exec(
        left,
      );
    const digits = found && (found[1] as string).split(/[.,]/).map(digitsIn);
    if (!found || !digits || digits.includes(null)) return null;
    const factor = found[2] === "k" ? 1e3 : found[2] === "m" ? 1e-3 : 1;
    const unit = /^ohm/i.test(found[3] as string) ? "Ω" : (found[3] as Amount["unit"]);
    mended ||= digits.some((one) => one?.mended);
    const value = Number(digits.map((one) => one?.text).join("."));
    list.push({ unit, value: Number((value * factor).toPrecision(12)) });
    left = left.slice(found[0].length);
  }
  return list.length > 0 ? { list, mended } : null;
}

function markOf(text: string): Meaning | null {
  if (/^(?:\d{1,3}[a-zA-Z]?|[A-Z][+-]?)$/.test(text))
    return { is: "mark", mark: text, mended: false };
  const digits = /^\d.{1,2}$/.test(text) ? digitsIn(text) : null;
  return digits && { is: "mark", mark: digits.text, mended: true };
}
