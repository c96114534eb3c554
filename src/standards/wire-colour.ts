import { COLOUR_CODES, type ColourCode, IEC_60757 } from "./iec-60757.ts";

/** The insulation's colour and that of the thin stripe, where it has one. */
export interface WireColour {
  readonly base: ColourCode;
  readonly tracer?: ColourCode | undefined;
}

const SEPARATORS = /[\s/\\,.+_-]+/;

/** The longest code first, so that `GNYE` is not read as green with a yellow tracer. */
const LONGEST_FIRST = [...COLOUR_CODES].sort((a, b) => b.length - a.length);

const BY_NAME: ReadonlyMap<string, ColourCode> = new Map([
  ...COLOUR_CODES.map((code): [string, ColourCode] => [IEC_60757[code].name.toUpperCase(), code]),
  ["GRAY", "GY"],
]);

/** Every code in a run of letters without gaps; null when something is left over. */
function codesIn(run: string): ColourCode[] | null {
  const codes: ColourCode[] = [];
  let rest = run;
  while (rest !== "") {
    const code = LONGEST_FIRST.find((candidate) => rest.startsWith(candidate));
    if (!code) return null;
    codes.push(code);
    rest = rest.slice(code.length);
  }
  return codes;
}

/**
 * Reads a wire colour as people write it: `RDBU`, `rd/bu`, `RD-BU`, `red blue`; the first is the
 * base. IEC 60757 joins two codes in its table's order and does not say which is the base, so a
 * colour copied from a drawing may need turning round. Null when it is not a colour, or has more
 * than two, or the same one twice.
 */
export function parseColour(text: string): WireColour | null {
  const codes: ColourCode[] = [];
  const upper = text.trim().toUpperCase();
  const named = BY_NAME.get(upper);
  if (named) return { base: named };
  for (const word of upper.split(SEPARATORS)) {
    if (word === "") continue;
    const byName = BY_NAME.get(word);
    const found = byName ? [byName] : codesIn(word);
    if (!found) return null;
    codes.push(...found);
  }
  const [base, tracer] = codes;
  if (!base || codes.length > 2 || base === tracer) return null;
  return tracer ? { base, tracer } : { base };
}

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

/** True when both show the same two colours in the same parts; green with yellow is `GNYE`. */
export function sameColour(a: WireColour, b: WireColour): boolean {
  const letters = (colour: WireColour) => `${colour.base}${colour.tracer ?? ""}`;
  return letters(a) === letters(b);
}
