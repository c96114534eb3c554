import { expect } from "vitest";
import { readJobFile, readJobText } from "../../src/job/index.ts";

/** Code, path and message of the first issue, once every issue is seen to be a full sentence. */
export function refusal(read: ReturnType<typeof readJobFile> | ReturnType<typeof readJobText>) {
  if (read.ok) return { code: "ok", path: "", message: "" };
  for (const { message } of read.issues) {
    expect(message).toMatch(/^\S.{10,}[:;] .+$/);
    expect(message.length).toBeLessThan(600);
  }
  const { code = "", path = "", message = "" } = read.issues[0] ?? {};
  return { code, path, message };
}

export const ofText = (text: string) => refusal(readJobText(text));

export const ofBytes = (bytes: Uint8Array, name = "job.pintruth") =>
  refusal(readJobFile(bytes, name));

/** Milliseconds that `work` takes. */
export function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
