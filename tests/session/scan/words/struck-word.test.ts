import { expect, test } from "vitest";
import {
  isTelling,
  letterByLetter,
  withHyphen,
} from "../../../../src/session/scan/words/struck-word.ts";

const readings = (...texts: string[]) => texts.map((text, n) => ({ text, weight: 80 - 10 * n }));

test("what chance hardly makes tells: names, values, wires with a colour and words known at pins", () => {
  for (const text of ["F12", "7,5 A", "30-3 RD/WH", "1.5 BN", "STOP LAMP", "VALVE 2"])
    expect(isTelling(text), text).toBe(true);
  for (const text of ["STOR LAMP", "EEED", "30-3", "0-75 BK", "30-13 0G", "I EVEL IN", "BII"])
    expect(isTelling(text), text).toBe(false);
});

test("letters of several looks make one text that makes sense, of each no more than was seen or is alike", () => {
  expect(letterByLetter(readings("19-8 YL/BN", "49-8 YE/8N"))).toBe("19-8 YE/BN");
  expect(letterByLetter(readings("I EVEL IN", "LFVEI 1N"))).toBe("LEVEL IN");
  expect(letterByLetter(readings("30-13 0G"))).toBe("30-13 OG");
  expect(letterByLetter(readings("15=22 PK"))).toBe("15-22 PK");
});

test("where no look has the letters, nothing is made up", () => {
  expect(letterByLetter(readings("B AB", "PI AP"))).toBe(null);
  expect(letterByLetter(readings("XJ/QW", "WQ"))).toBe(null);
  expect(letterByLetter([])).toBe(null);
});

test("a hyphen that went with the line is put back between two numbers, by the gap it left", () => {
  const spaced = (text: string, from: readonly number[]) => ({
    text,
    letters: [...text].map((letter, n) => ({
      text: letter,
      from: from[n] as number,
      to: (from[n] as number) + 15,
      word: 0,
    })),
  });
  expect(withHyphen({ text: "30 14BN", letters: [] }, 32)).toBe("30-14BN");
  expect(withHyphen(spaced("3112PK", [0, 18, 50, 68, 90, 110]), 32)).toBe("31-12PK");
  expect(withHyphen(spaced("3112PK", [0, 18, 36, 54, 90, 110]), 32)).toBe("3112PK");
  expect(withHyphen({ text: "30-3 RD", letters: [] }, 32)).toBe("30-3 RD");
});
