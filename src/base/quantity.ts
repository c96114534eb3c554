import { fail, ok, type Result } from "./result.ts";

/** What a meter is set to. A drop is read in volts. */
export type Measure = "volts" | "ohms" | "amps" | "drop";

/** A meter's answer in volts, ohms or amps; `OL` only ever in ohms. */
export type Measured = number | "OL";

type UnitLetter = "V" | "Ω" | "A";

const UNIT: Readonly<Record<Measure, UnitLetter>> = { volts: "V", drop: "V", ohms: "Ω", amps: "A" };

const UNIT_NAME: Readonly<Record<UnitLetter, string>> = { V: "volts", Ω: "ohms", A: "amps" };

/** The unit's letter: `V`, `Ω` or `A`. */
export const unitOf = (measure: Measure): UnitLetter => UNIT[measure];

/**
 * Reads what a mechanic types for a meter's display: comma or point, the unit or none, a prefix
 * (`12 mV`, `1.2k`), the trade's letter in place of the point (`1k2`, `4R7`), `OL` in its spellings.
 * Fails with a sentence that says what to type instead; never guesses a number, so a number with
 * both a comma and a point is refused: which of them is the decimal one depends on the country.
 */
export function parseQuantity(text: string, measure: Measure): Result<Measured> {
  const typed = text.trim();
  if (typed === "") return fail(issue("quantity-empty", "Type what the meter shows."));
  if (isOverload(typed)) {
    return measure === "ohms"
      ? ok("OL")
      : fail(issue("quantity-ol-not-ohms", "OL is a reading in ohms. Type the number shown."));
  }
  const found = NUMBER_AND_UNIT.exec(tidy(typed));
  if (!found) return fail(unreadable(typed, measure));
  const [, sign = "", digits = "", tail = ""] = found;
  const split = splitTail(tail);
  if (!split) return fail(unreadable(typed, measure));
  if (digits.includes(",") && digits.includes(".")) {
    return fail(
      issue(
        "quantity-two-marks",
        `“${typed}” has a comma and a point. Type only the one before the decimals, like ${EXAMPLE[UNIT[measure]]}.`,
      ),
    );
  }
  const unit = UNIT[measure];
  if (split.unit !== null && split.unit !== unit) {
    const other = UNIT_NAME[split.unit];
    return fail(
      issue("quantity-other-unit", `That is in ${other}; this reading is in ${UNIT_NAME[unit]}.`),
    );
  }
  const number = readDigits(digits, split.fraction);
  const factor = factorOf(split.prefix, unit);
  if (number === null || factor === null) return fail(unreadable(typed, measure));
  const value = Number((number * factor).toPrecision(12));
  if (sign !== "-" || value === 0) return ok(value);
  if (unit === "Ω") {
    return fail(
      issue(
        "quantity-negative-ohms",
        "No resistance is less than nothing: a meter that shows a minus in ohms finds voltage on the wire. Make it dead and measure again.",
      ),
    );
  }
  return ok(-value);
}

/** A reading as it is shown everywhere: `12.40 V`, `1.20 kΩ`, `12 mV`, `OL`. */
export function formatQuantity(value: Measured, measure: Measure): string {
  return format(value, measure, 4);
}

/** Like `formatQuantity`, but keeps every digit typed: what the pad echoes back. */
export function echoQuantity(value: Measured, measure: Measure): string {
  return format(value, measure, 12);
}

/** A band in one unit: `11.5 to 12.6 V`. Both ends the same give the single value. */
export function formatBand(low: number, high: number, measure: Measure): string {
  const size = Math.max(Math.abs(low), Math.abs(high));
  // Nobody reads a band of a few hundredths of a volt in thousandths.
  const scale = scaleFor(measure !== "ohms" && size >= 0.01 ? Math.max(size, 0.1) : size, measure);
  const ends = [low, high].map((end) => decimals(end / scale.factor, 1, 3));
  const unit = `${scale.prefix}${UNIT[measure]}`;
  return ends[0] === ends[1] ? `${ends[0]} ${unit}` : `${ends[0]} to ${ends[1]} ${unit}`;
}

const issue = (code: string, message: string) => ({ code, path: "", message });

const EXAMPLE: Readonly<Record<UnitLetter, string>> = {
  V: "12.4, 0.3 or 12 mV",
  Ω: "0.3, 4k7 or OL",
  A: "3.2 or 250 mA",
};

const unreadable = (typed: string, measure: Measure) =>
  issue("quantity-unreadable", `“${typed}” is no reading. Type it like ${EXAMPLE[UNIT[measure]]}.`);

/** OL, 0L, O.L, 0.L, open, ∞: a meter's overload with or without its unit. */
const isOverload = (typed: string) =>
  /^(?:[o0]\.?l\.?|over(?:load)?|open|inf(?:inity)?|∞)\s*[kKmM]?\s*(?:ohms?|Ω|\u2126|r)?$/i.test(
    typed,
  );

/** One kind of minus, one kind of ohm, one kind of micro, no thousands gaps. */
const tidy = (typed: string) =>
  typed
    .replace(/[\u2212\u2013\u2012\u2011]/g, "-")
    .replace(/\u2126/g, "Ω")
    .replace(/\u00b5/g, "μ")
    .replace(/[\u00a0\u2009\u202f]/g, " ")
    .replace(/(?<=\d) (?=\d{3}(?!\d))/g, "");

const NUMBER_AND_UNIT = /^([+-]?)\s*(\d[\d.,]*|[.,]\d+)\s*(.*)$/s;

const PREFIXES = "kKmMμu";
const TAIL =
  /^(k|K|m|M|μ|u|meg|Meg|MEG|kilo|milli|mega|micro)?\s*(v|volts?|r|ohms?|Ω|a|amps?|amperes?)?\s*(?:dc|d\.c\.)?\s*\.?$/i;
const LETTER_AS_POINT = /^([kKmMvVrRaAΩ])(\d+)\s*(Ω|ohms?|v|volts?|a|amps?)?$/i;

interface Tail {
  readonly prefix: string;
  readonly unit: UnitLetter | null;
  /** Digits after a letter that stands for the decimal point; empty when none does. */
  readonly fraction: string;
}

function splitTail(tail: string): Tail | null {
  const pointed = LETTER_AS_POINT.exec(tail);
  if (pointed) {
    const [, letter = "", fraction = "", word = ""] = pointed;
    const isPrefix = PREFIXES.includes(letter);
    return {
      prefix: isPrefix ? letter : "",
      unit: unitOfWord(isPrefix ? word : letter),
      fraction,
    };
  }
  const plain = TAIL.exec(tail);
  if (!plain) return null;
  const [, prefix = "", word = ""] = plain;
  return { prefix, unit: unitOfWord(word), fraction: "" };
}

function unitOfWord(word: string): UnitLetter | null {
  const first = word.charAt(0).toLowerCase();
  if (first === "v") return "V";
  if (first === "a") return "A";
  return first === "" ? null : "Ω";
}

/** One mark at most, and that one the decimal: `12,4` and `12.4`. */
function readDigits(digits: string, fraction: string): number | null {
  let plain = digits.replaceAll(",", ".");
  if (plain.indexOf(".") !== plain.lastIndexOf(".")) return null;
  if (fraction !== "") {
    if (plain.includes(".")) return null;
    plain = `${plain}.${fraction}`;
  }
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** Null for a prefix that no meter of this trade shows. */
function factorOf(prefix: string, unit: UnitLetter): number | null {
  const first = prefix.charAt(0);
  if (first === "") return 1;
  if (first === "k" || first === "K") return 1e3;
  if (first === "μ" || first === "u" || /^micro/i.test(prefix)) return 1e-6;
  if (/^meg/i.test(prefix)) return unit === "Ω" ? 1e6 : null;
  // Capitals are no sign of a megavolt: only ohms come in millions.
  if (first === "M" && unit === "Ω" && !/^milli/i.test(prefix)) return 1e6;
  return 1e-3;
}

interface Scale {
  readonly prefix: "" | "k" | "M" | "m";
  readonly factor: number;
  /** Decimals shown even when they are noughts. */
  readonly least: number;
}

function scaleFor(size: number, measure: Measure): Scale {
  if (measure === "ohms") {
    if (size >= 1e6) return { prefix: "M", factor: 1e6, least: 2 };
    if (size >= 1e3) return { prefix: "k", factor: 1e3, least: 2 };
    if (size >= 0.01 || size === 0) {
      return { prefix: "", factor: 1, least: size < 10 ? 2 : size < 100 ? 1 : 0 };
    }
    return { prefix: "m", factor: 1e-3, least: 0 };
  }
  if (size >= 0.1 || size === 0) return { prefix: "", factor: 1, least: 2 };
  return { prefix: "m", factor: 1e-3, least: 0 };
}

/** Below this no meter of the trade shows anything, and a solver's rounding lives there. */
const NOTHING = 5e-5;

function format(value: Measured, measure: Measure, significant: number): string {
  if (value === "OL") return "OL";
  const rounded = Math.abs(value) < NOTHING ? 0 : Number(value.toPrecision(significant));
  const scale = scaleFor(Math.abs(rounded), measure);
  const shown = decimals(rounded / scale.factor, scale.least, significant);
  return `${shown} ${scale.prefix}${UNIT[measure]}`;
}

/** At least `least` decimals, at most as many as `significant` digits leave. */
function decimals(value: number, least: number, significant: number): string {
  const rounded = Number(value.toPrecision(significant));
  const whole = Math.abs(rounded) < 1 ? 0 : Math.floor(Math.log10(Math.abs(rounded))) + 1;
  const most = Math.max(least, significant - whole);
  const full = rounded.toFixed(Math.min(most, 12));
  const point = full.indexOf(".");
  const kept = point < 0 ? full : trimNoughts(full, point + 1 + least);
  // A typographic minus stays clear of the hyphen on paper; -0.00 is just 0.00.
  return /^-[0.]*$/.test(kept) ? kept.slice(1) : kept.replace("-", "−");
}

function trimNoughts(text: string, keep: number): string {
  let end = text.length;
  while (end > keep && text[end - 1] === "0") end--;
  if (text[end - 1] === ".") end--;
  return text.slice(0, end);
}
