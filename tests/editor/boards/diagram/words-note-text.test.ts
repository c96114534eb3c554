import { expect, test } from "vitest";
import { freshText, laidText } from "../../../../src/editor/boards/diagram/scan/words-note-text.ts";
import type { WordItem } from "../../../../src/session/index.ts";

const fitting = (...keys: readonly string[]) =>
  keys.map((key) => ({ targets: [{ key }] }) as unknown as WordItem);

test("how many words fit, and how many of them are names", () => {
  expect(freshText(fitting("name X1"))).toBe("A word that was read fits what is drawn now.");
  expect(freshText(fitting("number W1", "number W2"))).toBe(
    "2 words that were read fit what is drawn now.",
  );
  expect(freshText(fitting("name X1", "number W2"))).toBe(
    "2 words that were read fit what is drawn now, one of them a name.",
  );
  expect(freshText(fitting("name X1", "number W2", "name X2"))).toBe(
    "3 words that were read fit what is drawn now, 2 of them names.",
  );
});

test("a few new splices are named one by one, and of many no more is said than is so", () => {
  expect(laidText(["X4"])).toBe(
    "The new splice is called X4 for now: the picture’s words have not been read.",
  );
  expect(laidText(["X1", "X3", "X9"])).toContain("3 new splices are called X1, X3 and X9 for now:");
  expect(laidText(["X1", "X3", "X9", "X7"])).toContain(
    "4 new splices are called X1, X3 and so on for now:",
  );
});
