import { Writable } from "node:stream";
import { expect, test } from "vitest";
import { AnswerStream } from "../../src/cli/answer-stream.ts";

/** A stream that takes so many pieces and fails at the next. */
function failingAfter(pieces: number, code: string) {
  const taken: string[] = [];
  const stream = new Writable({
    write(piece, _encoding, done) {
      if (taken.length < pieces) {
        taken.push(String(piece));
        done();
      } else done(Object.assign(new Error(code), { code }));
    },
  });
  return { taken, answer: new AnswerStream(stream) };
}

test("an answer that was written whole is no trouble", async () => {
  const { taken, answer } = failingAfter(9, "ENOSPC");
  answer.write("one\n");
  answer.write("two\n");
  expect(await answer.trouble()).toBeNull();
  expect(taken.join("")).toBe("one\ntwo\n");
});

test("a full disk is told with what to do, however much is written after it", async () => {
  const { answer } = failingAfter(1, "ENOSPC");
  for (const piece of ["one\n", "two\n", "three\n"]) answer.write(piece);
  expect((await answer.trouble())?.message).toBe("the disk is full: make room");
});

test("a reader that has seen enough is no trouble", async () => {
  const { answer } = failingAfter(0, "EPIPE");
  answer.write("one\n");
  expect(await answer.trouble()).toBeNull();
});
