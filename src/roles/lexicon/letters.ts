/** Letters that don't come apart into a plain one and a mark. */
const PLAIN: Readonly<Record<string, string>> = {
  Ł: "L",
  Ø: "O",
  Đ: "D",
  Æ: "AE",
  Œ: "OE",
  ẞ: "SS",
};

const SPELLED_OUT: Readonly<Record<string, string>> = {
  Ä: "AE",
  Ö: "OE",
  Ü: "UE",
  Å: "AA",
  Ø: "OE",
};

/**
 * Upper case whatever the language of the machine it runs on; full-width and half-width letters,
 * ligatures and the like as plain ones.
 */
export const upperCase = (text: string): string =>
  text.normalize("NFKC").toUpperCase().normalize("NFC");

/** Upper-case letters without their marks: `SORTIE`, `CIKIS`, `WEJSCIE`. Kana keep theirs. */
export function withoutMarks(upper: string): string {
  if (isAscii(upper)) return upper;
  return upper
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .normalize("NFC")
    .replace(/[ŁØĐÆŒẞ]/g, (letter) => PLAIN[letter] ?? letter);
}

/** As German and Swedish are written where a machine has no such letters: `ZUENDUNG`. */
export const spelledOut = (upper: string): string =>
  withoutMarks(upper.replace(/[ÄÖÜÅØ]/g, (letter) => SPELLED_OUT[letter] ?? letter));

// biome-ignore lint/suspicious/noControlCharactersInRegex: it is the range that is meant
const isAscii = (text: string): boolean => /^[\x00-\x7f]*$/.test(text);
