/** A fault in something a user or another program handed in: data, never thrown. */
export interface Issue {
  /** Stable code, kebab-case, for tests and scripts. */
  readonly code: string;
  /** Where in the input, e.g. `diagram.wires[3].from`; empty for the input as a whole. */
  readonly path: string;
  /** One sentence: what is wrong and what to do. */
  readonly message: string;
}

/** Either a value, or the issues that kept it from being made (at least one). */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

export const fail = (...issues: Issue[]): Result<never> => ({ ok: false, issues });

/** The one line that a status bar or stderr shows for a failed result. */
export function describeIssue(issue: Issue): string {
  return issue.path === "" ? issue.message : `${issue.path}: ${issue.message}`;
}
