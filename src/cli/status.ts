import { describeIssue, type Issue } from "../base/index.ts";
import type { Io } from "./call.ts";

/** 0 done; 1 at least one contradiction (`check` only); 2 the input or the call is bad. */
export type Status = 0 | 1 | 2;

/** One line on stderr: which file, where in it, what is wrong, what to do. */
export function complain(io: Io, file: string, issues: readonly Issue[]): Status {
  const [first, ...more] = issues;
  const what = first ? describeIssue(first) : "something is wrong";
  const rest = more.length > 0 ? ` (and ${more.length} more)` : "";
  // A name or a word out of a file may hold anything: it stays one line.
  const line = `${file === "" ? "pintruth" : file}: ${what}${rest}`;
  io.err(`${line.replace(/[\p{Cc}\u2028\u2029]+/gu, " ")}\n`);
  return 2;
}
