/** What a command knows of the world beside files. */
export interface Io {
  /** The answer, on stdout. Text ends with its own newline. */
  out(text: string): void;
  /** One line on what went wrong, on stderr, without its newline. */
  err(line: string): void;
  /** ISO 8601 date of today, in the user's own zone. */
  today(): string;
}

/** What a command returns to the shell. */
export const EXIT = {
  done: 0,
  /** `check` only: at least one contradiction. */
  contradicted: 1,
  /** The input or the call is bad. */
  bad: 2,
} as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];
