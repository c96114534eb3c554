import { expect, test } from "vitest";
import type { WordCrop } from "../../../../src/scan/index.ts";
import { readWord, SURE, type WordReader } from "../../../../src/session/index.ts";

const CROP: WordCrop = {
  box: { left: 10, top: 20, right: 90, bottom: 40 },
  turn: 0,
  tall: 20,
  isCapitals: true,
  isCut: false,
  isCrowded: false,
  bridged: null,
  aside: 0,
  grey: { width: 40, height: 40, data: new Uint8Array(1600).fill(255) },
};

/** A reader that says one thing after another, and the last for good; `asked` counts. */
function saying(...texts: readonly string[]) {
  const told = { asked: 0 };
  const reader: WordReader = {
    lanes: 1,
    read: async () => {
      const text = texts[Math.min(told.asked++, texts.length - 1)] as string;
      return { text, sure: 95, letters: [] };
    },
    close: () => {},
  };
  return { reader, told };
}

test("clear print that makes sense is read once, and is sure", async () => {
  const { reader, told } = saying("30-3 RD");
  expect(await readWord(reader, CROP)).toMatchObject({
    text: "30-3 RD",
    doubts: [],
    isPrint: true,
  });
  expect(told.asked).toBe(1);
});

test("a few letters are read twice, and are sure only where both say the same", async () => {
  const same = saying("86");
  expect(await readWord(same.reader, CROP)).toMatchObject({ text: "86", doubts: [] });
  expect(same.told.asked).toBe(2);
  const other = await readWord(saying("86", "84").reader, CROP);
  expect(other?.doubts).toContain("otherwise");
  expect(other?.sure).toBeLessThan(SURE);
});

test("where ink was cut away beside it, a word is print but not sure", async () => {
  const word = await readWord(saying("0-7 RD/BU").reader, { ...CROP, isCrowded: true });
  expect(word).toMatchObject({ doubts: ["crowded"], isPrint: true });
  expect(word?.sure).toBeLessThan(SURE);
});

test("a hyphen that a line took with it is put back, and such a word is never sure", async () => {
  const cut = { ...CROP, isCut: true, bridged: CROP.grey };
  const word = await readWord(saying("30 3 RD").reader, cut);
  expect(word).toMatchObject({ text: "30-3 RD", doubts: ["cut"], isPrint: false });
  expect((await readWord(saying("30 3 RD").reader, CROP))?.text).toBe("30 3 RD");
});

test("of what lines left of a word the look counts that makes a name", async () => {
  const cut = { ...CROP, isCut: true, bridged: CROP.grey };
  expect((await readWord(saying("MS", "MS", "MS", "M5").reader, cut))?.text).toBe("M5");
});

test("a number with a hyphen and nothing behind or before it is a piece of a longer one", async () => {
  for (const text of ["31-", "-8 BK"]) {
    expect((await readWord(saying(text).reader, CROP))?.doubts, text).toContain("torn");
  }
  for (const text of ["D+", "B-", "31-8 BK"]) {
    expect((await readWord(saying(text).reader, CROP))?.doubts, text).toEqual([]);
  }
});
