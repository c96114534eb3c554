/**
 * Text of a job made fit for a terminal: on one line, and without the characters that move its
 * cursor, colour it or turn its direction round. What a job says must never look like what we say.
 */
export function plain(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/[\p{Cc}\u202a-\u202e\u2066-\u2069\u200e\u200f\p{Cs}]/gu, "\ufffd")
    .trim();
}

/** Columns that running text fills. */
export const WIDTH = 100;

/** Breaks text at spaces into lines of at most `width`; a longer word stays whole. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines;
}

/** `3 warnings`, `1 note` */
export const counted = (count: number, noun: string): string =>
  `${count} ${noun}${count === 1 ? "" : "s"}`;
