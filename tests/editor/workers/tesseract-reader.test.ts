// @vitest-environment node
import { fileURLToPath } from "node:url";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import Tesseract from "tesseract.js";
import { afterAll, beforeAll, expect, test } from "vitest";
import { blankPage, drawLine, drawText } from "../../../scripts/samples/drawing/page.ts";
import { type Point, type Random, seededRandom } from "../../../src/base/index.ts";
import { tesseractReader } from "../../../src/editor/workers/tesseract-reader.ts";
import {
  apply,
  finished,
  greyFrom,
  homographyBetween,
  NOT_SQUARED,
  planOf,
  preparePage,
  type Quad,
  squareUp,
  toResult,
  type WordCrop,
  wordBoxesOf,
} from "../../../src/scan/index.ts";
import {
  meaningsOf,
  type ReadWord,
  readWord,
  type WordReader,
} from "../../../src/session/index.ts";
import { withOddDoubts } from "../../../src/session/scan/words/odd-words.ts";
import { photoOfPage, SHADED } from "../../e2e/support/page-photo.ts";
import { type PrintedText, sweeperLabels } from "../../support/sweeper-print.ts";

const path = (from: string) => fileURLToPath(new URL(`../../../${from}`, import.meta.url));
const SCAN = path("sample-data/sweeper/images/sweeper-sheet-7.jpg");
const DATA = path("node_modules/@tesseract.js-data/eng/4.0.0_best_int");

/** Where the middle of what was read lies within a printed text. */
const isOf = ({ box, turn, tall }: PrintedText, crop: Pick<WordCrop, "box" | "turn">): boolean => {
  const [x, y] = [(crop.box.left + crop.box.right) / 2, (crop.box.top + crop.box.bottom) / 2];
  const room = 0.4 * tall;
  return (
    (turn === 0) === (crop.turn === 0) &&
    x > box.left - room &&
    x < box.right + room &&
    y > box.top - room &&
    y < box.bottom + room
  );
};

interface Label {
  readonly printed: string;
  /** What was read there, in order; empty where nothing was. */
  readonly read: string;
  /** The queue would show it as doubtful, or not at all. */
  readonly isFlagged: boolean;
}

let reader: WordReader;
const labels: Label[] = [];

beforeAll(async () => {
  const image = await loadImage(SCAN);
  const pen = createCanvas(image.width, image.height).getContext("2d");
  pen.drawImage(image, 0, 0);
  const { width, height, data } = pen.getImageData(0, 0, image.width, image.height);
  const crops = finished(wordBoxesOf(finished(preparePage(greyFrom({ width, height, data })))));
  reader = await tesseractReader(Tesseract.createWorker, 1, { langPath: DATA });
  for (const printed of sweeperLabels()) {
    const read: ReadWord[] = [];
    for (const crop of crops.filter((one) => isOf(printed, one))) {
      const word = await readWord(reader, crop);
      if (word) read.push(word);
    }
    read.sort((a, b) => a.box.left - b.box.left);
    const isDoubtful = ({ doubts, text }: ReadWord) =>
      doubts.length > 0 || meaningsOf(text)[0]?.mended;
    labels.push({
      printed: printed.text,
      read: read.map(({ text }) => text).join(" "),
      isFlagged: read.length === 0 || read.some(isDoubtful),
    });
  }
}, 240_000);

afterAll(() => reader?.close());

const bare = (text: string) => text.replaceAll(" ", "");
const isRight = ({ printed, read }: Label) => bare(printed) === bare(read);

test("the demo's scan has the labels that are counted here", () => {
  expect(labels.length).toBeGreaterThan(120);
  expect(labels.map(({ printed }) => printed)).toEqual(
    expect.arrayContaining(["SP7", "15-3 RD/WH", "F3  7,5 A", "LEVEL IN", "31-0 BK", "X31"]),
  );
});

test("95 of 100 labels of the demo's scan are read right before anything is put right", () => {
  const wrong = labels.filter((label) => !isRight(label));
  expect(1 - wrong.length / labels.length, JSON.stringify(wrong)).toBeGreaterThanOrEqual(0.95);
});

test("whatever is read wrong is shown as doubtful, and little else is", () => {
  expect(labels.filter((label) => !isRight(label) && !label.isFlagged)).toEqual([]);
  const flagged = labels.filter((label) => isRight(label) && label.isFlagged);
  expect(flagged.length / labels.length, JSON.stringify(flagged)).toBeLessThan(0.1);
});

test("on a photo of the sheet, what a coffee ring or a scratch hides is never sure", async () => {
  const photo = await photoOfPage(SHADED);
  const image = await loadImage(photo.file.buffer);
  const pen = createCanvas(image.width, image.height).getContext("2d");
  pen.drawImage(image, 0, 0);
  const { width, height, data } = pen.getImageData(0, 0, image.width, image.height);
  const squaring = { ...NOT_SQUARED, corners: photo.corners };
  const plan = planOf(squaring, { width, height });
  const picture = finished(squareUp(greyFrom({ width, height, data }), squaring));
  const page: Quad = [
    [0, 0],
    [3508, 0],
    [3508, 2480],
    [0, 2480],
  ];
  const there = homographyBetween(page, photo.corners);
  if (!plan || !picture || !there) throw new Error("the photo's corners are no page");
  const crops = finished(wordBoxesOf(finished(preparePage(picture))));
  for (const printed of sweeperLabels().filter(({ text }) => /^(30-7|15-6) /.test(text))) {
    const at = ([x, y]: Point) => toResult(plan, apply(there, [x, y])) as Point;
    const [left, top] = at([printed.box.left, printed.box.top]);
    const [right, bottom] = at([printed.box.right, printed.box.bottom]);
    const box = { left, top, right, bottom };
    const own = crops.filter((crop) => isOf({ ...printed, box, tall: bottom - top }, crop));
    expect(own.length, printed.text).toBeGreaterThan(0);
    for (const crop of own) {
      const word = await readWord(reader, crop);
      const isRight = word === null || bare(word.text) === bare(printed.text);
      expect(isRight || word.doubts.length > 0, `${printed.text}: ${word?.text}`).toBe(true);
    }
  }
}, 60_000);

const WORDS = ["30-3 RD", "SP6", "15-4 RD/WH", "LEVEL IN", "K1", "60 A", "X31", "31-11 BN"];
const SIZE = { width: 520, height: 400 };

interface Try {
  readonly about: string;
  readonly isRight: boolean;
  readonly isFlagged: boolean;
}

/** Words drawn level or upright beside a line, so far from their middle in their sizes, and read. */
async function readBeside(random: Random, aside: number): Promise<Try> {
  const turn = random.chance(0.5) ? 0 : -90;
  const words = random.pick(WORDS);
  const size = 26 + random.below(12);
  const page = blankPage(SIZE.width, SIZE.height);
  const [x, y] = [270, 210];
  const by = aside * size;
  const line: readonly Point[] =
    turn === 0
      ? [
          [60, y + by],
          [480, y + by + 3],
        ]
      : [
          [x + by, 40],
          [x + by + 3, 370],
        ];
  drawLine(page, line, 4);
  drawText(page, words, [x, y], { size, align: "center", turn });
  const { data } = page.pen.getImageData(0, 0, SIZE.width, SIZE.height);
  const crops = finished(wordBoxesOf(finished(preparePage(greyFrom({ ...SIZE, data })))));
  const read: ReadWord[] = [];
  for (const crop of crops) {
    const word = await readWord(reader, crop);
    if (word) read.push(word);
  }
  read.sort((a, b) => (turn === 0 ? a.box.left - b.box.left : b.box.top - a.box.top));
  const text = read.map((word) => word.text).join(" ");
  return {
    about: `${words} at ${size} px, turn ${turn}, line at ${aside}: ${text}`,
    isRight: bare(text) === bare(words),
    isFlagged: read.length === 0 || read.some(({ doubts }) => doubts.length > 0),
  };
}

test("words clear of a line are read right, level and upright", async () => {
  const random = seededRandom(11);
  const tries: Try[] = [];
  for (let n = 0; n < 8; n++) tries.push(await readBeside(random, 0.55));
  expect(tries.filter(({ isRight }) => !isRight)).toEqual([]);
}, 60_000);

test("words that a line touches or runs through are never sure, and mostly right", async () => {
  const random = seededRandom(12);
  const touched: Try[] = [];
  const cut: Try[] = [];
  for (let n = 0; n < 8; n++) touched.push(await readBeside(random, 0.36 + 0.04 * random.next()));
  for (let n = 0; n < 6; n++) cut.push(await readBeside(random, 0.25 * random.next()));
  expect([...touched, ...cut].filter(({ isFlagged }) => !isFlagged)).toEqual([]);
  const right = (tries: readonly Try[]) => tries.filter(({ isRight }) => isRight).length;
  const about = JSON.stringify([...touched, ...cut].map((one) => one.about));
  expect(right(touched), about).toBeGreaterThanOrEqual(6);
  expect(right(cut), about).toBeGreaterThanOrEqual(4);
}, 60_000);

const PRINTS = ["31-8 BK", "30-12 BN", "22-7 RD/WH", "15-3 BU"];

/** Where strokes run that part a word `wide` pixels wide: slanting, or two upright ones, through its letters. */
function partingLines(random: Random, wide: number): readonly (readonly Point[])[] {
  const at = () => (random.next() - 0.5) * wide;
  const slants = random.chance(0.6);
  const upright = (x: number): readonly Point[] => [
    [x, -170],
    [x + 1, 170],
  ];
  if (!slants) return [upright(at()), upright(at())];
  const x = at();
  return [
    [
      [x - 60, -60],
      [x + 60, 60],
    ],
  ];
}

test("no piece of a print that strokes part is read wrong and sure", async () => {
  const random = seededRandom(2);
  const wrong: string[] = [];
  for (let n = 0; n < 12; n++) {
    const words = PRINTS[n % PRINTS.length] as string;
    const size = 16 + 2 * n;
    const page = blankPage(SIZE.width, SIZE.height);
    drawText(page, words, [270, 200], { size, align: "center" });
    // Its letters are some 0.55 of their size wide.
    for (const line of partingLines(random, 0.55 * size * words.length))
      drawLine(
        page,
        line.map(([x, y]): Point => [270 + x, 200 + y]),
        2 + (n % 4),
      );
    const { data } = page.pen.getImageData(0, 0, SIZE.width, SIZE.height);
    const crops = finished(wordBoxesOf(finished(preparePage(greyFrom({ ...SIZE, data })))));
    const read: ReadWord[] = [];
    const unread: WordCrop[] = [];
    for (const crop of crops) {
      const word = await readWord(reader, crop);
      if (word) read.push(word);
      else unread.push(crop);
    }
    const isWhole = bare(read.map(({ text }) => text).join("")) === bare(words);
    const sure = withOddDoubts(read, unread).filter(({ doubts }) => doubts.length === 0);
    if (!isWhole) wrong.push(...sure.map(({ text }) => `${words} at ${size} px: ${text}`));
  }
  expect(wrong).toEqual([]);
}, 60_000);
