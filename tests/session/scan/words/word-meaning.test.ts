import { expect, test } from "vitest";
import { type Meaning, meaningsOf } from "../../../../src/session/index.ts";

const meaning = (text: string, is: Meaning["is"]) => meaningsOf(text).find((one) => one.is === is);
const wire = (text: string) => {
  const found = meaning(text, "wire");
  return found?.is === "wire" ? { ...found.print, mended: found.mended } : null;
};
const name = (text: string) => {
  const found = meaning(text, "name");
  return found?.is === "name" ? [found.id, found.mended] : null;
};

test.each([
  ["30-3 RD", { number: "30-3", colour: { base: "RD" } }],
  ["15-4 RD/WH", { number: "15-4", colour: { base: "RD", tracer: "WH" } }],
  ["31-11BN", { number: "31-11", colour: { base: "BN" } }],
  ["31-0", { number: "31-0" }],
  ["15", { number: "15" }],
  ["RDBU", { colour: { base: "RD", tracer: "BU" } }],
  ["sw/rt", { colour: { base: "BK", tracer: "RD" } }],
  ["15 BK/RD", { number: "15", colour: { base: "BK", tracer: "RD" } }],
  ["1,5 BK", { mm2: 1.5, colour: { base: "BK" } }],
  ["1,5RD", { mm2: 1.5, colour: { base: "RD" } }],
  ["2.5 mm² RD", { mm2: 2.5, colour: { base: "RD" } }],
  ["30-1 RD 2.5mm2", { number: "30-1", colour: { base: "RD" }, mm2: 2.5 }],
  ["AWG 14", { awg: 14 }],
  ["14 AWG", { awg: 14 }],
])("%s is printed along a wire", (text, print) => {
  expect(wire(text)).toEqual({ ...print, mended: false });
});

test.each([
  ["15-8 8K/RD", { number: "15-8", colour: { base: "BK", tracer: "RD" } }],
  ["3O-3 RD", { number: "30-3", colour: { base: "RD" } }],
  ["2I-1 YE", { number: "21-1", colour: { base: "YE" } }],
  ["15-6 RD/W", { number: "15-6", colour: { base: "RD", tracer: "WH" } }],
  ["30-18K", { number: "30-1", colour: { base: "BK" } }],
])("%s is put right, and said to be", (text, print) => {
  expect(wire(text)).toEqual({ ...print, mended: true });
});

test("letters are put right only where a single reading makes sense", () => {
  // B may be BK, BN or BU; X is the beginning of none.
  expect(wire("30-1 B")).toBeNull();
  expect(wire("30-1 XY")).toBeNull();
  expect(wire("30-1 RD/RD")).toBeNull();
  // BL is black to one and blue to another: never guessed.
  expect(wire("30-1 BL")).toBeNull();
});

test.each([
  ["F1", ["F1", false]],
  ["SP7", ["SP7", false]],
  ["X31", ["X31", false]],
  ["K2a", ["K2a", false]],
  ["El", ["E1", true]],
  ["SPB", null],
  ["SP1O", ["SP10", true]],
  ["FI", ["F1", true]],
  ["AS", null],
  ["OUT", null],
  ["PUMP", null],
  ["IGN", null],
  ["12", null],
])("%s as a part's name", (text, expected) => {
  expect(name(text)).toEqual(expected);
});

test("a name may bring its value along", () => {
  expect(meaning("F1 60 A", "name")).toEqual({
    is: "name",
    id: "F1",
    amounts: [{ unit: "A", value: 60 }],
    mended: false,
  });
  expect(meaning("F3  7,5 A", "name")).toMatchObject({ amounts: [{ unit: "A", value: 7.5 }] });
});

test.each([
  ["60 A", [{ unit: "A", value: 60 }]],
  [
    "24V 5W",
    [
      { unit: "V", value: 24 },
      { unit: "W", value: 5 },
    ],
  ],
  ["24 V DC", [{ unit: "V", value: 24 }]],
  ["1.2 kΩ", [{ unit: "Ω", value: 1200 }]],
  ["500 mA", [{ unit: "A", value: 0.5 }]],
])("%s is a value", (text, amounts) => {
  expect(meaning(text, "amounts")).toEqual({ is: "amounts", amounts, mended: false });
});

test("a value without a unit, or with more behind it, is none", () => {
  expect(meaning("60", "amounts")).toBeUndefined();
  expect(meaning("60 AMP FUSE", "amounts")).toBeUndefined();
});

test.each([
  ["30", "30"],
  ["87a", "87a"],
  ["B", "B"],
])("%s is a mark at a pin", (text, mark) => {
  expect(meaning(text, "mark")).toEqual({ is: "mark", mark, mended: false });
});

test("a sign right behind a letter is part of it", () => {
  expect(meaning("D+", "mark")).toMatchObject({ mark: "D+" });
  expect(meaning("B-", "mark")).toMatchObject({ mark: "B-" });
  expect(wire("30-5RD -")).toMatchObject({ number: "30-5" });
});

test("a value is no wire's number, and a letter alone no colour", () => {
  expect(wire("10A")).toBeNull();
  expect(wire("24V")).toBeNull();
  expect(wire("W")).toBeNull();
});

test("dust at the ends is left off, and what holds no letter means nothing", () => {
  expect(wire(" - 50-1 BK/YE .")).toMatchObject({ number: "50-1" });
  expect(meaningsOf("+")).toEqual([]);
  expect(meaningsOf("- -")).toEqual([]);
});
