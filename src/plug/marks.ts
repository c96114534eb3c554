/** What is moulded beside the cavities. */
export type MarkStyle =
  | { readonly style: "numbers"; readonly first: number }
  /** Letters in alphabetical order but for those left out; after the last of them AA, AB ... */
  | { readonly style: "letters"; readonly leaveOut: readonly string[] }
  /** Marks as they stand on the plug, in order. */
  | { readonly style: "typed"; readonly marks: readonly string[] };

const ALPHABET = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];

/** Letters that mouldings often leave out, because they read as 1 and 0. */
export const CONFUSABLE_LETTERS = ["I", "O", "Q"] as const;

/** The first `count` marks of a style, no two alike. A typed list too short goes on in numbers. */
export function marksOf(style: MarkStyle, count: number): string[] {
  switch (style.style) {
    case "numbers":
      return Array.from({ length: count }, (_, index) => String(style.first + index));
    case "letters":
      return letterMarks(style.leaveOut, count);
    case "typed":
      return typedMarks(style.marks, count);
  }
}

function letterMarks(leaveOut: readonly string[], count: number): string[] {
  const letters = ALPHABET.filter((letter) => !leaveOut.includes(letter));
  return Array.from({ length: count }, (_, index) => {
    let mark = "";
    for (let rest = index; rest >= 0; rest = Math.floor(rest / letters.length) - 1) {
      mark = (letters[rest % letters.length] ?? "") + mark;
    }
    return mark;
  });
}

function typedMarks(typed: readonly string[], count: number): string[] {
  const marks: string[] = [];
  for (const mark of typed) {
    if (marks.length < count && mark !== "" && !marks.includes(mark)) marks.push(mark);
  }
  while (marks.length < count) marks.push(nextMark(marks));
  return marks;
}

/** Marks typed into one field: split at spaces, commas and semicolons. */
export const splitMarks = (text: string): string[] =>
  text.split(/[\s,;]+/).filter((mark) => mark !== "");

/** Marks that a list holds more than once, each named once. */
export function repeatedMarks(marks: readonly string[]): string[] {
  return [...new Set(marks.filter((mark, index) => marks.indexOf(mark) !== index))];
}

/** The mark that a cavity added after `marks` gets: the lowest whole number in no use. */
export function nextMark(marks: readonly string[]): string {
  const used = new Set(marks);
  let number = 1;
  while (used.has(String(number))) number++;
  return String(number);
}
