import type { Writable } from "node:stream";
import type { Issue } from "../base/index.ts";
import { fileIssue } from "../store/files.ts";

/** Where the answer is written: nothing is thrown there, and at the end it is told what went wrong. */
export class AnswerStream {
  private readonly stream: Writable;
  private error: NodeJS.ErrnoException | null = null;

  constructor(stream: Writable) {
    this.stream = stream;
    stream.on("error", (error) => {
      this.error ??= error;
    });
  }

  write(text: string): void {
    this.stream.write(text);
  }

  /**
   * Why the answer could not be written whole; null where it was, or where its reader had seen enough
   * (`pintruth check ... | head`).
   */
  async trouble(): Promise<Issue | null> {
    await new Promise((written) => this.stream.write("", written));
    return this.error === null || this.error.code === "EPIPE" ? null : fileIssue(this.error);
  }
}
