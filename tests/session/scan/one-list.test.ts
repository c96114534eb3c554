import { expect, test } from "vitest";
import { createStore, keepOneOpen } from "../../../src/session/index.ts";

function list() {
  const store = createStore({ isOpen: false, isBusy: false });
  return {
    subscribe: store.subscribe,
    isOpen: () => store.get().isOpen,
    isBusy: () => store.get().isBusy,
    close: () => store.set((now) => ({ ...now, isOpen: false })),
    set: (change: { isOpen?: boolean; isBusy?: boolean }) =>
      store.set((now) => ({ ...now, ...change })),
  };
}

test("of several lists the one opened last stays open", () => {
  const [parts, words, lines] = [list(), list(), list()];
  const stop = keepOneOpen([parts, words, lines]);
  const open = () => [parts, words, lines].map((one) => one.isOpen());
  lines.set({ isOpen: true });
  parts.set({ isOpen: true });
  expect(open()).toEqual([true, false, false]);
  words.set({ isOpen: true });
  expect(open()).toEqual([false, true, false]);
  words.close();
  expect(open()).toEqual([false, false, false]);
  stop();
  parts.set({ isOpen: true });
  words.set({ isOpen: true });
  expect(open()).toEqual([true, true, false]);
});

test("a list that is being made is closed only when it is done", () => {
  const [parts, words] = [list(), list()];
  keepOneOpen([parts, words]);
  words.set({ isOpen: true, isBusy: true });
  parts.set({ isOpen: true });
  expect(words.isOpen()).toBe(true);
  words.set({ isBusy: false });
  expect([parts.isOpen(), words.isOpen()]).toEqual([true, false]);
});

test("a list that tells of something before it is closed is asked to close once", () => {
  const [words, lines] = [list(), list()];
  let asked = 0;
  const close = () => {
    asked++;
    words.set({ isBusy: false });
    words.close();
  };
  keepOneOpen([{ ...words, close }, lines]);
  words.set({ isOpen: true });
  lines.set({ isOpen: true });
  expect([asked, words.isOpen(), lines.isOpen()]).toEqual([1, false, true]);
});
