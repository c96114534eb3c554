import { expect, test } from "vitest";
import { fitsInk, type Grey, greyOf, type ReadLetter } from "../../../src/scan/index.ts";

const TALL = 30;

/** A stroke of ink: where it begins and ends across, and how dark it is. */
interface Stroke {
  readonly from: number;
  readonly to: number;
  readonly top?: number;
  readonly bottom?: number;
  readonly grey?: number;
}

/** White with letters that are mere blocks, 30 pixels tall. */
function printOf(strokes: readonly Stroke[]): Grey {
  const grey = greyOf(220, 60);
  grey.data.fill(255);
  for (const { from, to, top = 0, bottom = TALL, grey: shade = 60 } of strokes) {
    for (let y = 15 + top; y < 15 + bottom; y++) {
      for (let x = from; x < to; x++) grey.data[y * grey.width + x] = shade;
    }
  }
  return grey;
}

const BLOCKS: readonly Stroke[] = [
  { from: 20, to: 38 },
  { from: 44, to: 62 },
  { from: 68, to: 86 },
];
const letters = (text: string, at: readonly Stroke[] = BLOCKS): ReadLetter[] =>
  [...text].map((letter, n) => ({
    text: letter,
    from: at[n]?.from ?? 0,
    to: at[n]?.to ?? 0,
    word: 0,
  }));

test("one piece of ink for each letter fits, and so do letters that touch one another", () => {
  expect(fitsInk(printOf(BLOCKS), letters("SP7"))).toBe(true);
  const touching = [{ from: 20, to: 62 }, BLOCKS[2] as Stroke];
  expect(fitsInk(printOf(touching), letters("SP7"))).toBe(true);
});

test("ink where no letter was read does not fit", () => {
  expect(fitsInk(printOf([...BLOCKS, { from: 120, to: 138 }]), letters("SP7"))).toBe(false);
});

test("a letter in two pieces does not fit, but an i or a colon does", () => {
  const broken = [
    BLOCKS[0] as Stroke,
    { from: 44, to: 62, bottom: 8 },
    { from: 44, to: 62, top: 14 },
    BLOCKS[2] as Stroke,
  ];
  expect(fitsInk(printOf(broken), letters("SP7"))).toBe(false);
  expect(fitsInk(printOf(broken), letters("Si7"))).toBe(true);
});

test("a gap as wide as a letter does not fit inside a word", () => {
  const apart = [BLOCKS[0] as Stroke, { from: 68, to: 86 }];
  expect(fitsInk(printOf(apart), letters("S7", apart))).toBe(false);
  const [first, second] = letters("S7", apart) as [ReadLetter, ReadLetter];
  expect(fitsInk(printOf(apart), [first, { ...second, word: 1 }])).toBe(true);
});

test("half a letter much paler than the rest does not fit", () => {
  const pale = [BLOCKS[0] as Stroke, { from: 44, to: 53 }, { from: 53, to: 62, grey: 165 }];
  expect(fitsInk(printOf(pale), letters("SP"))).toBe(false);
});
