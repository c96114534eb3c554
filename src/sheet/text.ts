/** Said of a module that a reading was taken with, and that the notes under the table refer to. */
export const PLUGGED_IN = "plugged in";

/**
 * Text of a job made fit for a line of print: no control characters, no lone surrogates, no marks
 * that turn the reading direction, one kind of space.
 */
export function plain(text: string): string {
  return text
    .replace(/[\t\r\n\u2028\u2029]+/g, " ")
    .replace(/\p{Cc}|\p{Cs}|[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu, "");
}
