import fc from "fast-check";
import { expect, test } from "vitest";
import { InStep } from "../../src/base/index.ts";
import "../support/seed.ts";

interface Held {
  readonly key: number;
}

const held = (keys: readonly number[]): Held[] => keys.map((key) => ({ key }));
const keyOf = ({ key }: Held) => key;

/** Distinct keys, and any choice of them and of others in any order. */
const story = fc.record({
  before: fc.uniqueArray(fc.nat(60), { maxLength: 60 }),
  now: fc.uniqueArray(fc.nat(80), { maxLength: 80 }),
});

test("whatever came, went or changed places, each one of before is found and no other", () => {
  fc.assert(
    fc.property(story, ({ before, now }) => {
      const list = held(before);
      const inStep = new InStep(list, keyOf);
      for (const key of now) expect(inStep.find(key)).toBe(list.find((one) => one.key === key));
    }),
  );
});

test("only what is not where it is expected is looked up elsewhere", () => {
  const list = held(Array.from({ length: 100 }, (_, key) => key));
  const asked: number[] = [];
  const inStep = new InStep(list, keyOf, (key) => {
    asked.push(key);
    return undefined;
  });
  // 3 to 7 and 50 are gone, 200 is new in the middle, 300 at the end
  const now = [0, 1, 2, ...list.slice(8, 40).map(keyOf), 200];
  now.push(...list.slice(40, 50).map(keyOf), ...list.slice(51).map(keyOf), 300);
  const found = now.map((key) => inStep.find(key)?.key ?? key);
  expect(found).toEqual(now);
  expect(asked).toEqual([200, 300]);
});
