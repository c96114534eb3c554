import { expect, test } from "vitest";
import { blankPage, drawLine, drawText, type Page } from "../../../scripts/samples/drawing/page.ts";
import { type Point, type Random, seededRandom } from "../../../src/base/index.ts";
import { finished, greyFrom, preparePage, wordBoxesOf } from "../../../src/scan/index.ts";
import { READ_TALL, type WordCrop } from "../../../src/scan/words/word-crop.ts";

const SIZE = { width: 520, height: 400 };
const PEN = 4;

/** Lines that every page has, far from its word: they say how wide a line is. */
const FAR_LINES: readonly (readonly Point[])[] = [
  [
    [30, 30],
    [490, 30],
  ],
  [
    [30, 30],
    [30, 370],
  ],
];

interface Setting {
  readonly words: string;
  readonly at: Point;
  readonly size: number;
  /** 0, or -90 for words read from the bottom up. */
  readonly turn: 0 | -90;
}

function pageOf(
  { words, at, size, turn }: Setting,
  lines: readonly (readonly Point[])[],
  align: "center" | "right" = "center",
): Page {
  const page = blankPage(SIZE.width, SIZE.height);
  for (const line of [...FAR_LINES, ...lines]) drawLine(page, line, PEN);
  drawText(page, words, at, { size, align, turn });
  return page;
}

function cropsOf(page: Page): readonly WordCrop[] {
  const { data } = page.pen.getImageData(0, 0, SIZE.width, SIZE.height);
  return finished(wordBoxesOf(finished(preparePage(greyFrom({ ...SIZE, data })))));
}

const isNear = ({ box }: WordCrop, [x, y]: Point) =>
  Math.abs((box.left + box.right) / 2 - x) < 20 && Math.abs((box.top + box.bottom) / 2 - y) < 20;

const inkIn = ({ data }: WordCrop["grey"]) =>
  data.reduce((sum, value) => sum + (value < 128 ? 1 : 0), 0);

/** Square pixels of the page, however much the crop is enlarged. */
const inkOfLetters = ({ grey, tall }: WordCrop) => inkIn(grey) * (tall / READ_TALL) ** 2;

/** Share of the ink of one crop that the other has too, laid so that they fit best. */
function shared(a: WordCrop["grey"], b: WordCrop["grey"]): number {
  let best = 0;
  for (let dy = -6; dy <= 6; dy++) {
    for (let dx = -6; dx <= 6; dx++) {
      let both = 0;
      for (let y = 0; y < a.height; y++) {
        for (let x = 0; x < a.width; x++) {
          const [u, v] = [x + dx, y + dy];
          if ((a.data[y * a.width + x] as number) >= 128) continue;
          if (u < 0 || v < 0 || u >= b.width || v >= b.height) continue;
          if ((b.data[v * b.width + u] as number) < 128) both++;
        }
      }
      best = Math.max(best, both);
    }
  }
  return best / Math.max(inkIn(a), inkIn(b));
}

const WORDS = ["30-3 RD", "SP6", "F2", "15-4 RD/WH", "LEVEL IN", "K1", "60 A", "X31"];

const someWords = (random: Random, turn: Setting["turn"]): Setting => ({
  words: random.pick(WORDS),
  at: [270, 210],
  size: 26 + random.below(12),
  turn,
});

test.each([0, -90] as const)(
  "words by themselves are one crop, turned level: drawn at %i degrees",
  (turn) => {
    const random = seededRandom(1);
    for (let n = 0; n < 6; n++) {
      const setting = someWords(random, turn);
      const crops = cropsOf(pageOf(setting, []));
      expect(crops.length, `${setting.words} at ${setting.size}`).toBe(1);
      const [crop] = crops as [WordCrop];
      expect(isNear(crop, setting.at)).toBe(true);
      expect(crop.grey.width, setting.words).toBeGreaterThan(crop.grey.height - 40);
      // One letter has no way of its own; of more the way is known.
      expect(crop.turn, setting.words).toBe(turn === 0 ? 0 : 270);
    }
  },
);

/** A line along the words, so far aside of their middle in their sizes; all across the page. */
function lineAlong({ at: [x, y], size, turn }: Setting, aside: number): readonly Point[] {
  const by = aside * size;
  return turn === 0
    ? [
        [60, y + by],
        [480, y + by + 3],
      ]
    : [
        [x + by, 60],
        [x + by + 3, 360],
      ];
}

test("words whose feet stand on a line are cut nearly as they are alone, and said to be touched", () => {
  const random = seededRandom(2);
  for (let n = 0; n < 7; n++) {
    const setting = someWords(random, random.chance(0.5) ? 0 : -90);
    const aside = 0.36 + 0.05 * random.next();
    const [alone] = cropsOf(pageOf(setting, [])) as [WordCrop];
    const found = cropsOf(pageOf(setting, [lineAlong(setting, aside)]));
    const about = `${setting.words}, ${setting.size} px, turn ${setting.turn}, line at ${aside}`;
    expect(found.length, about).toBe(1);
    const [crop] = found as [WordCrop];
    for (const side of ["left", "top", "right", "bottom"] as const) {
      expect(Math.abs(crop.box[side] - alone.box[side]), `${side} of ${about}`).toBeLessThan(9);
    }
    const kept = inkOfLetters(crop) / inkOfLetters(alone);
    expect(kept, about).toBeGreaterThan(0.75);
    expect(kept, about).toBeLessThan(1.1);
    expect([alone.isCut, crop.isCut], about).toEqual([false, true]);
  }
});

test("words with a line through their middle are found whole, and said to be cut", () => {
  const random = seededRandom(3);
  for (let n = 0; n < 7; n++) {
    const setting = someWords(random, random.chance(0.5) ? 0 : -90);
    const aside = 0.2 * (random.next() - 0.5);
    const [alone] = cropsOf(pageOf(setting, [])) as [WordCrop];
    const found = cropsOf(pageOf(setting, [lineAlong(setting, aside)]));
    const about = `${setting.words}, ${setting.size} px, turn ${setting.turn}, line at ${aside}`;
    expect(found.length, about).toBeGreaterThan(0);
    expect(
      found.every(({ isCut }) => isCut),
      about,
    ).toBe(true);
    const box = (pick: (all: number[]) => number, side: keyof WordCrop["box"]) =>
      pick(found.map((one) => one.box[side]));
    const least = (all: number[]) => Math.min(...all);
    const most = (all: number[]) => Math.max(...all);
    const ends =
      setting.turn === 0
        ? [box(least, "left") - alone.box.left, box(most, "right") - alone.box.right]
        : [box(least, "top") - alone.box.top, box(most, "bottom") - alone.box.bottom];
    for (const end of ends) expect(Math.abs(end), about).toBeLessThan(0.6 * setting.size);
  }
});

test("a line beside words leaves them untouched", () => {
  const random = seededRandom(4);
  for (let n = 0; n < 6; n++) {
    const setting = someWords(random, random.chance(0.5) ? 0 : -90);
    const [alone] = cropsOf(pageOf(setting, [])) as [WordCrop];
    const [beside] = cropsOf(pageOf(setting, [lineAlong(setting, 0.62)])) as [WordCrop];
    expect(beside.isCut).toBe(false);
    expect(shared(alone.grey, beside.grey), setting.words).toBeGreaterThan(0.97);
  }
});

test("ink that hides a letter or stands where one may is said, and what stands clear is not", () => {
  const crowdedBy = (draw: (page: Page) => void): boolean[] => {
    const page = pageOf({ words: "30-7 RD", at: [270, 210], size: 30, turn: 0 }, []);
    draw(page);
    return cropsOf(page)
      .filter(({ box }) => Math.abs(box.top + box.bottom - 420) < 12 && box.right - box.left > 60)
      .map(({ isCrowded }) => isCrowded);
  };
  expect(crowdedBy(() => {})).toEqual([false]);
  // A scratch that grows together with the first figure, and a blot on the last letter.
  const scratch: readonly Point[] = [
    [214, 176],
    [226, 244],
  ];
  expect(crowdedBy((page) => drawLine(page, scratch, 3))).toEqual([true]);
  const blot = (page: Page) => {
    page.pen.beginPath();
    page.pen.arc(318, 200, 7, 0, 7);
    page.pen.fill();
  };
  expect(crowdedBy(blot)).toEqual([true]);
  // A symbol's edge a letter's height away.
  const edge: readonly Point[] = [
    [190, 180],
    [190, 240],
  ];
  expect(crowdedBy((page) => drawLine(page, edge, PEN))).toEqual([false]);
});

test("a line that parts two rows may hide a letter between them, but not where they stand well apart", () => {
  const partedBy = (gap: number): boolean[] => {
    const left: Setting = { words: "58-", at: [270 - gap / 2, 212], size: 34, turn: 0 };
    const between: readonly Point[] = [
      [270, 120],
      [270, 370],
    ];
    const page = pageOf(left, [between], "right");
    drawText(page, "4BN", [270 + gap / 2, 212], { size: 34 });
    return cropsOf(page).map(({ isCrowded }) => isCrowded);
  };
  expect(partedBy(20)).toEqual([true, true]);
  expect(partedBy(40)).toEqual([false, false]);
});

test("holes that were filled for following lines are open in letters", () => {
  const crops = cropsOf(pageOf({ words: "8B4A6", at: [270, 210], size: 22, turn: 0 }, []));
  expect(crops.length).toBe(1);
  expect((crops[0] as WordCrop).box.right - (crops[0] as WordCrop).box.left).toBeGreaterThan(55);
});

test("two lines of a caption are two crops, and a wide gap parts words of different size", () => {
  const page = blankPage(SIZE.width, SIZE.height);
  for (const line of FAR_LINES) drawLine(page, line, PEN);
  drawText(page, "BATTERY", [200, 200], { size: 30 });
  drawText(page, "ISOLATOR", [200, 234], { size: 30 });
  drawText(page, "86", [320, 300], { size: 20 });
  drawText(page, "31-1 BN", [355, 300], { size: 29 });
  const lefts = cropsOf(page).map(({ box }) => Math.round(box.left / 10) * 10);
  expect(lefts.sort()).toEqual([200, 200, 320, 360]);
});

test("lines, dots and symbols alone are no words", () => {
  const page = blankPage(SIZE.width, SIZE.height);
  for (const line of FAR_LINES) drawLine(page, line, PEN);
  page.pen.beginPath();
  page.pen.arc(200, 200, 12, 0, 7);
  page.pen.fill();
  drawText(page, "MOTOR", [350, 250], { size: 30 });
  drawLine(
    page,
    [
      [150, 300],
      [250, 350],
    ],
    PEN,
  );
  const found = cropsOf(page);
  expect(found.map(({ box }) => Math.round(box.left / 10) * 10)).toEqual([350]);
});

test("a page with more print than any drawing is refused with what to do", () => {
  const grey = { width: 2900, height: 2200, data: new Uint8Array(2900 * 2200).fill(255) };
  const ink = (left: number, top: number, wide: number, high: number) => {
    for (let y = top; y < top + high; y++)
      grey.data.fill(0, y * grey.width + left, y * grey.width + left + wide);
  };
  for (let top = 20; top < 2170; top += 27) {
    for (let left = 20; left < 2870; left += 36) {
      ink(left, top, 3, 14);
      ink(left, top + 11, 10, 3);
    }
  }
  expect(() => finished(wordBoxesOf(finished(preparePage(grey))))).toThrow(/far more print/);
});

test("a word that a slanting stroke has eaten the other end of is never clear", () => {
  const words: Setting = { words: "31-8 BK", at: [260, 200], size: 32, turn: 0 };
  for (const turn of [0, -90] as const) {
    const setting = { ...words, turn };
    const clear = cropsOf(pageOf(setting, [])).filter((crop) => isNear(crop, setting.at));
    expect(clear.map(({ isCrowded }) => isCrowded)).toEqual([false]);
    // Through the letters behind the number, then through those of the number.
    for (const aside of [30, 40, -30]) {
      const along = (by: number): Point =>
        turn === 0 ? [260 + aside + by, 200 + by] : [260 + by, 200 - aside + by];
      const page = pageOf(setting, [[along(-60), along(60)]]);
      const small = cropsOf(page).filter(({ tall }) => tall < 40);
      expect(small.filter(({ isCrowded, isCut }) => !isCrowded && !isCut)).toEqual([]);
    }
  }
});
