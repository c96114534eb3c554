import { upperCase } from "./letters.ts";

/** Up to this many volts a stated voltage is a sensor's supply and not the machine's. */
const HIGHEST_REFERENCE_VOLTS = 10;

const KANA_OR_KANJI = "\\p{sc=Han}\\p{sc=Hiragana}\\p{sc=Katakana}\\u30fc";
const LETTER = `(?:(?![${KANA_OR_KANJI}])[\\p{L}\\p{M}])`;

const BETWEEN_WORDS = /([\p{L}\p{M}\d])-(?=[\p{L}\d])/gu;
const BETWEEN_KANA = new RegExp(`([${KANA_OR_KANJI}])[\\s\\u30fb]+(?=[${KANA_OR_KANJI}])`, "gu");
/** `G.N.D.` */
const DOTTED = /(?<![\p{L}.])\p{L}(?:\.\p{L}){1,3}(?![\p{L}])\.?/gu;
const VOLTS = /\b(\d+(?:[.,]\d+)?)\s*(?:VDC|VOLT(?:S|IOS|I)?|ボルト|V)(?!\p{sc=Latin}|\d)/gu;
/** Articles and the like between the words of one phrase; none of them is a word of any table. */
const LINKING =
  /(?<![\p{L}\d])(?:D'|L'|DELL'|(?:DE|DEL|DELLA|DU|DES|LA|F[ÜU]R|F[ÖO]R|DLA)(?=\s))/gu;
const TOKEN = new RegExp(
  [
    "[+-]?\\d+(?:[.,]\\d+)?V[+-]?",
    "[+-]\\d+(?:[.,]\\d+)?",
    "\\d+(?:\\p{sc=Latin}(?!\\p{sc=Latin})|(?![\\p{sc=Latin}\\d]))",
    `[${KANA_OR_KANJI}]+`,
    `${LETTER}+[+-](?![\\p{L}\\d])`,
    `${LETTER}+`,
    "[+-]",
  ].join("|"),
  "gu",
);

/**
 * Splits a printed word into tokens, upper case: words with a sign that belongs to them (`B+`),
 * terminal numbers (`31B`), voltages as `<V>` or `<REF>`, lone signs, runs of kana and kanji.
 */
export function tokensOf(printed: string): readonly string[] {
  const text = upperCase(printed)
    .replace(/[−–—]/g, "-")
    .replace(/[’`´]/g, "'")
    // A hyphen between words is no minus sign.
    .replace(BETWEEN_WORDS, "$1 ")
    .replace(/\s-\s+(?=\S)/g, " ")
    .replace(/\bN\s*[/.]\s*C\b\.?/g, "NC")
    .replace(DOTTED, (letters) => letters.replaceAll(".", ""))
    .replace(LINKING, "")
    .replace(BETWEEN_KANA, "$1")
    .replace(VOLTS, "$1V");
  return (text.match(TOKEN) ?? []).map(asVoltage);
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
