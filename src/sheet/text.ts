/** Said of a module that a reading was taken with, and that the notes under the table refer to. */
export const PLUGGED_IN = "plugged in";

/** Letters of one word that are printed: a line is sought for every few of them, and nobody reads more. */
const MOST_IN_A_WORD = 80;
/** Scripts that write without gaps break anywhere: their letters make no word. */
const ENDLESS = new RegExp(`[^\\s\\p{Lo}]{${MOST_IN_A_WORD + 1},}`, "gu");

/**
 * Text of a job made fit for a line of print: no control characters, no lone surrogates, no marks
 * that turn the reading direction, one kind of space, no word without an end.
 */
export function plain(text: string): string {
  return text
    .replace(/[\t\r\n\u2028\u2029]+/g, " ")
    .replace(/\p{Cc}|\p{Cs}|[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu, "")
    .replace(ENDLESS, (word) => `${[...word].slice(0, MOST_IN_A_WORD - 1).join("")}…`);
}
