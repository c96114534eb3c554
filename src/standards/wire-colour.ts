import {
  COLOUR_NAMES,
  type ColourWords,
  ENGLISH_LETTERS,
  GERMAN_LETTERS,
  STANDARD_LETTERS,
} from "./colour-words.ts";
import { type ColourCode, IEC_60757 } from "./iec-60757.ts";

/** The insulation's colour and that of the thin stripe, where it has one. */
export interface WireColour {
  readonly base: ColourCode;
  readonly tracer?: ColourCode | undefined;
}

/** Between two colours; a code may follow another with nothing between. */
const SEPARATORS = /[\s/\\,;:.+&_()-]+/;
const WITH = /\sW\//g;
/** Say that a second colour follows, and nothing else. */
const JOINING = new Set(["WITH", "AND", "A", "AN"]);
/** Say which of the two is the thin one. */
const STRIPE = new Set(["STRIPE", "STRIPED", "STRIPES", "TRACER", "TRACE"]);

/** A way of writing colours: what one text holds is read in one of them throughout. */
const HABITS: readonly (readonly ColourWords[])[] = [
  [STANDARD_LETTERS, ENGLISH_LETTERS, COLOUR_NAMES],
  [GERMAN_LETTERS],
];

/**
 * Every colour that a text can mean, as people write them: `RDBU`, `rd/bu`, `WHT-BLK`, `red with a
 * blue stripe`, `sw/rt`. The first is the base, unless it says "blue stripe on red": IEC 60757 joins
 * two codes in its table's order and does not say which is the base, so a colour copied from a
 * drawing may need turning round. The letters of the standard are never taken for anything else.
 * Empty when it is no colour, or has more than two, or the same one twice; several when it can't be
 * told what is meant: then ask.
 */
export function readColours(text: string): readonly WireColour[] {
  const words = text
    .toUpperCase()
    .replace(WITH, " WITH ")
    .split(SEPARATORS)
    .filter((word) => word !== "");
  if (words.length === 0) return [];
  const whole = COLOUR_NAMES.get(words.join("-"));
  if (whole) return whole.map((base) => ({ base }));
  const standard = readIn([STANDARD_LETTERS], words);
  if (standard.length > 0) return standard;
  const found = HABITS.flatMap((habit) => readIn(habit, words));
  return found.filter((one, index) => found.findIndex((other) => isSame(one, other)) === index);
}

/** The one colour that a text means; null when it is none, or when it can't be told which. */
export function parseColour(text: string): WireColour | null {
  const [only, ...others] = readColours(text);
  return only && others.length === 0 ? only : null;
}

/** Why a text can't be taken as a colour, and what to type instead. */
export function whyNoColour(text: string): string {
  const meant = readColours(text).map((one) => `${nameColour(one)} (${formatColour(one)})`);
  if (meant.length < 2)
    return `“${text}” is no colour code. Base first, then the tracer, as in BNBK; a shade that has no code belongs in the note.`;
  return `“${text}” may be ${meant.slice(0, -1).join(", ")} or ${meant.at(-1)}. Say which it is.`;
}

function readIn(habit: readonly ColourWords[], words: readonly string[]): WireColour[] {
  const has = (word: string) => habit.some((one) => one.has(word));
  const on = words.indexOf("ON");
  const stripe = words.findIndex((word) => STRIPE.has(word));
  const colours = words.filter(
    (word, index) => index !== on && (has(word) || !(JOINING.has(word) || STRIPE.has(word))),
  );
  const runs = colours.reduce<ColourCode[][]>(
    (before, word) =>
      before.flatMap((run) => codesIn(habit, word).map((more) => [...run, ...more])),
    [[]],
  );
  return runs.flatMap(([first, second, ...more]): WireColour[] => {
    if (!first || more.length > 0 || first === second) return [];
    if (!second) return on < 0 && stripe < 0 ? [{ base: first }] : [];
    const inOrder = { base: first, tracer: second };
    const turned = { base: second, tracer: first };
    // "Red with blue stripe" and "blue stripe on red" are plain; of "blue on red" or "blue stripe
    // red" it is not certain which is meant to be the thin one.
    if (on < 0 && (stripe < 0 || stripe === words.length - 1)) return [inOrder];
    return stripe >= 0 && stripe === on - 1 ? [turned] : [turned, inOrder];
  });
}

/** Every way to read a run of letters without gaps as colours to the end, of three at most. */
function codesIn(habit: readonly ColourWords[], run: string, most = 3): ColourCode[][] {
  if (run === "") return [[]];
  if (most === 0) return [];
  return habit.flatMap((words) =>
    [...words].flatMap(([word, codes]) => {
      if (!run.startsWith(word)) return [];
      // Green and yellow joined are one colour, not green with a yellow tracer.
      if (word === "GN" && run.startsWith("GNYE")) return [];
      const rest = codesIn(habit, run.slice(word.length), most - 1);
      return codes.flatMap((code) => rest.map((more) => [code, ...more]));
    }),
  );
}

const isSame = (a: WireColour, b: WireColour) => a.base === b.base && a.tracer === b.tracer;

/**
 * The letters of a wire colour, base first: `BNBK` is brown with a black tracer. Green with a
 * yellow tracer is written `GN/YE`, because `GNYE` is a colour of its own in IEC 60757.
 */
export function formatColour(colour: WireColour): string {
  if (!colour.tracer) return colour.base;
  const joined = `${colour.base}${colour.tracer}`;
  return joined === "GNYE" ? "GN/YE" : joined;
}

/** In words: `brown with a black tracer`. */
export function nameColour(colour: WireColour): string {
  const base = IEC_60757[colour.base].name;
  if (!colour.tracer) return base;
  const tracer = IEC_60757[colour.tracer].name;
  return `${base} with ${/^[aeiou]/.test(tracer) ? "an" : "a"} ${tracer} tracer`;
}

/**
 * How one wire's colour compares with another: `turned` when both have the same two colours and only
 * base and tracer are exchanged, which letters copied from a drawing can't settle.
 */
export function compareColours(a: WireColour, b: WireColour): "same" | "turned" | "different" {
  if (sameColour(a, b)) return "same";
  const turned = a.tracer && { base: a.tracer, tracer: a.base };
  return turned && sameColour(turned, b) ? "turned" : "different";
}

/** True when both show the same two colours in the same parts; green with yellow is `GNYE`. */
export function sameColour(a: WireColour, b: WireColour): boolean {
  const letters = (colour: WireColour) => `${colour.base}${colour.tracer ?? ""}`;
  return letters(a) === letters(b);
}
