/** Text in which letters that look alike may have been put right. */
export interface PutRight {
  readonly text: string;
  /** Whether anything had to be, and how many letters. */
  readonly mended: boolean;
  readonly mends: number;
}

/** What readers of print take for one another (common practice, no source). */
const DIGIT_FOR: Readonly<Record<string, string>> = {
  O: "0",
  Q: "0",
  D: "0",
  I: "1",
  L: "1",
  l: "1",
  "|": "1",
  Z: "2",
  S: "5",
  G: "6",
  B: "8",
};

const LETTER_FOR: Readonly<Record<string, string>> = {
  "0": "O",
  "1": "I",
  "2": "Z",
  "5": "S",
  "6": "G",
  "8": "B",
};

/** The text as digits only; null where a letter is like none. */
export const digitsIn = (text: string): PutRight | null => swapped(text, /\d/, DIGIT_FOR);

/** The text as capitals only; null where a digit is like none. */
export const lettersIn = (text: string): PutRight | null => swapped(text, /[A-Z]/, LETTER_FOR);

function swapped(
  text: string,
  wanted: RegExp,
  table: Readonly<Record<string, string>>,
): PutRight | null {
  let out = "";
  let mends = 0;
  for (const letter of text) {
    const right = wanted.test(letter) ? letter : table[letter];
    if (right === undefined) return null;
    out += right;
    if (right !== letter) mends++;
  }
  return { text: out, mended: mends > 0, mends };
}
