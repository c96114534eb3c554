// @vitest-environment node
import type { createWorker } from "tesseract.js";
import { expect, test } from "vitest";
import { tesseractReader } from "../../../src/editor/workers/tesseract-reader.ts";
import type { Print } from "../../../src/session/index.ts";

const print = (n: number): Print => ({
  picture: Uint8Array.of(n),
  as: "line",
  isCapitals: true,
});

/** Threads that answer what they are asked, one at a time, when they are let; every other fails to open where wanted. */
function threads(isBroken: (n: number) => boolean = () => false) {
  const told = { opened: 0, closed: 0, busy: 0, mostBusy: 0 };
  const waiting: (() => void)[] = [];
  const create = (async () => {
    if (isBroken(told.opened++)) throw new Error("no memory");
    return {
      setParameters: async () => {},
      recognize: async ([picture]: Uint8Array) => {
        told.mostBusy = Math.max(told.mostBusy, ++told.busy);
        await new Promise<void>((done) => waiting.push(done));
        told.busy--;
        const bbox = { x0: 0, x1: 1 };
        const words = [{ text: `${picture}`, confidence: 90, symbols: [{ text: "x", bbox }] }];
        return { data: { blocks: [{ paragraphs: [{ lines: [{ words }] }] }] } };
      },
      terminate: async () => told.closed++,
    };
  }) as unknown as typeof createWorker;
  const letOne = async () => {
    for (let tries = 0; waiting.length === 0 && tries < 20; tries++) await Promise.resolve();
    waiting.pop()?.();
  };
  return { create, told, letOne };
}

test("two threads read at the same time, each answer to what was asked, and both are let go", async () => {
  const { create, told, letOne } = threads();
  const reader = await tesseractReader(create, 2, {});
  expect(reader.lanes).toBe(2);
  const answers = Promise.all([1, 2, 3, 4].map((n) => reader.read(print(n))));
  // The later thread is let first each time: no answer may take another's place.
  for (let n = 0; n < 4; n++) await letOne();
  expect((await answers).map(({ text }) => text)).toEqual(["1", "2", "3", "4"]);
  expect(told.mostBusy).toBe(2);
  reader.close();
  expect(told.closed).toBe(2);
});

test("where one thread can't be opened the other reads alone", async () => {
  const { create } = threads((n) => n === 1);
  expect((await tesseractReader(create, 2, {})).lanes).toBe(1);
  await expect(tesseractReader(threads(() => true).create, 2, {})).rejects.toThrow(
    "The reader of print could not be started.",
  );
});
