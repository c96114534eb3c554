import { describeIssue, type Issue } from "../base/index.ts";

/** A job is in the store but cannot be read. Nothing is lost: `text` is what is stored. */
export class UnreadableJob extends Error {
  override readonly name = "UnreadableJob";

  constructor(
    readonly key: string,
    readonly issues: readonly Issue[],
    /** The stored JSON, for the user to save as a file and put right. */
    readonly text: string,
  ) {
    const [first] = issues;
    super(first ? describeIssue(first) : "the stored job cannot be read");
  }
}
