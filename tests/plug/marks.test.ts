import fc from "fast-check";
import { expect, test } from "vitest";
import {
  CONFUSABLE_LETTERS,
  marksOf,
  nextMark,
  repeatedMarks,
  splitMarks,
} from "../../src/plug/index.ts";

test("letters leave out I, O and Q and go on with AA after Z", () => {
  const marks = marksOf({ style: "letters", leaveOut: CONFUSABLE_LETTERS }, 26);
  expect(marks.join(" ")).toBe("A B C D E F G H J K L M N P R S T U V W X Y Z AA AB AC");
});

test("all letters, then AA to AZ, then BA", () => {
  const marks = marksOf({ style: "letters", leaveOut: [] }, 54);
  expect(marks[25]).toBe("Z");
  expect(marks[26]).toBe("AA");
  expect(marks[51]).toBe("AZ");
  expect(marks.slice(52)).toEqual(["BA", "BB"]);
});

test("numbers run on from the first", () => {
  expect(marksOf({ style: "numbers", first: 7 }, 3)).toEqual(["7", "8", "9"]);
});

test("a typed list too short goes on with numbers in no use", () => {
  expect(marksOf({ style: "typed", marks: ["30", "1", "30"] }, 4)).toEqual(["30", "1", "2", "3"]);
});

test("marks typed into one field are split, and repeats are told", () => {
  expect(splitMarks(" 30, 85;86  87\n87a,")).toEqual(["30", "85", "86", "87", "87a"]);
  expect(repeatedMarks(["1", "2", "1", "1", "2", "3"])).toEqual(["1", "2"]);
});

test("the next mark fills the first gap", () => {
  expect(nextMark(["1", "2", "4", "A"])).toBe("3");
  expect(nextMark([])).toBe("1");
});

const styles = fc.oneof(
  fc.record({ style: fc.constant("numbers" as const), first: fc.nat(99) }),
  fc.record({
    style: fc.constant("letters" as const),
    leaveOut: fc.subarray(["I", "O", "Q", "S", "Z"]),
  }),
  fc.record({ style: fc.constant("typed" as const), marks: fc.array(fc.string()) }),
);

test("marks of one face are never alike and never empty", () => {
  fc.assert(
    fc.property(styles, fc.nat(120), (style, count) => {
      const marks = marksOf(style, count);
      expect(marks).toHaveLength(count);
      expect(new Set(marks).size).toBe(count);
      expect(marks).not.toContain("");
      if (style.style === "letters") {
        for (const left of style.leaveOut) expect(marks.join("")).not.toContain(left);
      }
    }),
  );
});
