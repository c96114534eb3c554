import { expect, test } from "vitest";
import { blankPage, drawLine, drawText, type Page } from "../../../scripts/samples/drawing/page.ts";
import type { Point } from "../../../src/base/index.ts";
import { finished } from "../../../src/scan/index.ts";
import { type Bits, bitsFromText, bitsOf } from "../../../src/scan/raster.ts";
import { withoutLines } from "../../../src/scan/words/without-lines.ts";
import { times } from "../../support/drawn-pages/text-page.ts";

const SIZE = { width: 320, height: 90 };
const PEN = 4;

/** Ink of a small page, level or with all of it turned by a quarter. */
function inkOf(draw: (page: Page) => void, turn: 0 | -90): Bits {
  const page = blankPage(SIZE.width, SIZE.height);
  draw(page);
  const { data } = page.pen.getImageData(0, 0, SIZE.width, SIZE.height);
  const [width, height] = turn === 0 ? [320, 90] : [90, 320];
  const out = bitsOf(width, height);
  for (let y = 0; y < SIZE.height; y++) {
    for (let x = 0; x < SIZE.width; x++) {
      const [u, v] = turn === 0 ? [x, y] : [y, SIZE.width - 1 - x];
      out.data[v * width + u] = (data[4 * (y * SIZE.width + x)] as number) < 128 ? 1 : 0;
    }
  }
  return out;
}

/** Pixels of one that are ink in the other too, a pixel beside counted. */
function near(one: Bits, other: Bits): number {
  const { width, height, data } = one;
  const isInk = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && other.data[y * width + x] === 1;
  let count = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (!data[y * width + x]) continue;
      const around = [-1, 0, 1].some((dy) => [-1, 0, 1].some((dx) => isInk(x + dx, y + dy)));
      if (around) count++;
    }
  }
  return count;
}

const inkIn = ({ data }: Bits) => data.reduce((sum, one) => sum + one, 0);

const WORDS = ["30-3 RD", "15-12 GN/BK", "LEVEL IN", "K13", "XNVAWM", "58-6 OG/BU"];

/** How much of the letters is left of words with a line, and how much of what is left are letters: 0 to 1. */
function kept(words: string, line: readonly Point[], turn: 0 | -90) {
  const text = (page: Page) => drawText(page, words, [160, 45], { size: 34, align: "center" });
  const truth = inkOf(text, turn);
  const struck = inkOf((page) => {
    drawLine(page, line, PEN);
    text(page);
  }, turn);
  const { ink } = finished(withoutLines(struck, PEN));
  return { letters: near(truth, ink) / inkIn(truth), clean: near(ink, truth) / inkIn(ink) };
}

/** The worst of all, and how much of the letters is left on the whole. */
const measured = (all: readonly ReturnType<typeof kept>[]) => ({
  mean: all.reduce((sum, { letters }) => sum + letters, 0) / all.length,
  letters: Math.min(...all.map(({ letters }) => letters)),
  clean: Math.min(...all.map(({ clean }) => clean)),
});

test.each([0, -90] as const)(
  "letters that a line runs through along the words are left, and little else: turned by %i",
  (turn) => {
    const found = WORDS.flatMap((words) =>
      [-4, 2, 6].map((by) =>
        kept(
          words,
          [
            [6, 45 + by],
            [314, 46 + by],
          ],
          turn,
        ),
      ),
    );
    const { letters, mean, clean } = measured(found);
    // Bars that lie wholly in the line are not to be known of.
    expect(letters).toBeGreaterThan(0.93);
    expect(mean).toBeGreaterThan(0.975);
    expect(clean).toBeGreaterThan(0.96);
  },
);

test.each([0, -90] as const)("letters that a line crosses are left: turned by %i", (turn) => {
  const found = WORDS.flatMap((words) =>
    [120, 150, 181].map((x) =>
      kept(
        words,
        [
          [x, 4],
          [x + 1, 86],
        ],
        turn,
      ),
    ),
  );
  const { letters, mean, clean } = measured(found);
  expect(letters).toBeGreaterThan(0.92);
  expect(mean).toBeGreaterThan(0.984);
  expect(clean).toBeGreaterThan(0.99);
});

/** A line three pixels wide under and over what is drawn, 90 pixels long. */
const around = (above: readonly string[], below: readonly string[]): string[] => {
  const wide = (row: string) => `${" ".repeat(40)}${row}`.padEnd(90);
  return [...above.map(wide), ...times(3, "#".repeat(90)), ...below.map(wide)];
};
const leftOf = (rows: readonly string[]) => {
  const { ink } = finished(withoutLines(bitsFromText(rows), 3));
  return rows.map((_, y) =>
    Array.from(ink.data.subarray(y * 90 + 36, y * 90 + 66), (one) => (one ? "#" : ".")).join(""),
  );
};

test("a slanting stroke goes on straight through a line, and a line by itself leaves nothing", () => {
  const left = leftOf(
    around(
      ["###         ", " ###        ", "  ###       ", "   ###      ", "    ###     "],
      ["        ### ", "         ###", "          ###", "           ###", "            ###"],
    ),
  );
  expect(left.slice(4, 9)).toEqual([
    "........###...................",
    ".........###..................",
    "..........###.................",
    "...........###................",
    "............###...............",
  ]);
  expect(leftOf(around(times(5, ""), times(5, ""))).join("")).not.toContain("#");
});

test("the foot of a curve that a line hides is closed, two letters' stems are not joined", () => {
  const round = [
    "###       ###",
    "###       ###",
    "###       ###",
    " ###     ### ",
    "  ###   ###  ",
  ];
  const curve = leftOf(around(["#############", ...round], times(5, "")));
  // Its top holds the two strokes together.
  expect(curve[6]).toContain("#########");
  const apart = leftOf(around(["###       ###", ...round], times(5, "")));
  expect(apart.slice(6).join("")).not.toContain("#");
});

test("what sticks out of a line by a pixel is its ragged edge, however long", () => {
  const left = leftOf(around(["", "", "", "", "#".repeat(20)], times(5, "")));
  expect(left.join("")).not.toContain("#");
});

test("what sticks out by a pixel between two strokes of a letter may be a bar's edge, and stays", () => {
  const strokes = times(4, "###            ###");
  const left = leftOf(around([...strokes, "#".repeat(18)], times(5, "")));
  expect(left[4]).toBe("....##################........");
});
