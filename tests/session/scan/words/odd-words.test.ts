import { expect, test } from "vitest";
import { SURE } from "../../../../src/session/index.ts";
import { withOddDoubts } from "../../../../src/session/scan/words/odd-words.ts";
import { readRight, sweeperWords } from "./printed-words.ts";

const BOX = { left: 0, top: 0, right: 90, bottom: 20 };
const read = (text: string) => readRight({ text, box: BOX, turn: 0, tall: 20 });
const doubtsIn = (texts: readonly string[]) =>
  Object.fromEntries(
    withOddDoubts(texts.map(read)).flatMap(({ text, doubts }) =>
      doubts.length > 0 ? [[text, doubts]] : [],
    ),
  );

const USUAL = ["30-1 RD", "30-2 RD", "30-3 RD/WH", "15-1 BK", "15-2 BK/RD", "31-1 BN", "31-2 BN"];

test("what is printed on the demo is not odd", () => {
  expect(withOddDoubts(sweeperWords()).filter(({ doubts }) => doubts.length > 0)).toEqual([]);
});

test("figures that make no sense are never sure", () => {
  expect(doubtsIn(["15-6 RO/W", "58 1 GY/BK", "01"])).toEqual({
    "15-6 RO/W": ["senseless"],
    "58 1 GY/BK": ["senseless"],
    "01": ["senseless"],
  });
  expect(doubtsIn(["PUMP", "OFF-RUN-START", "SP7", "7,5 A", "86", "1.5 BN"])).toEqual({});
  expect(withOddDoubts([read("15-6 RO/W")])[0]?.sure).toBeLessThan(SURE);
});

test("a wire's print that lost its colour, its number or a figure is unlike the others", () => {
  expect(doubtsIn([...USUAL, "30-4", "GY/BK", "0-7 RD/BU"])).toEqual({
    "30-4": ["unlike"],
    "GY/BK": ["unlike"],
    "0-7 RD/BU": ["unlike"],
  });
  expect(doubtsIn([...USUAL, "58-1 GY", "1.5 BN", "86"])).toEqual({});
});

test("where nothing is usual, nothing is unlike it", () => {
  expect(doubtsIn(["30-4", "GY/BK", "0-7 RD", "30-1 RD"])).toEqual({});
});
