import { type Box, boxAround } from "../../base/index.ts";
import { components } from "../components.ts";
import { distancesToPaper, STEPS_PER_PIXEL } from "../distance.ts";
import type { PreparedPage } from "../lines/prepared-page.ts";
import type { Bits } from "../raster.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { bridgeIn } from "./bridge.ts";
import { cutCrop, timesFor } from "./cut-crop.ts";
import { BY_LEVEL, BY_UPRIGHT, glyphsOf, type Inked } from "./glyphs.ts";
import { letterInk } from "./letter-ink.ts";
import { goesOnTorn, hasOtherInk } from "./other-ink.ts";
import { partedRows } from "./parted-rows.ts";
import { type WithoutLines, withoutLines } from "./without-lines.ts";
import { ASIDE, type WordCrop } from "./word-crop.ts";
import { USUAL_TURN, type WordLine, wordLinesOf } from "./word-lines.ts";

/** Crops between two tellings. */
const BATCH = 20;
/** So many words, or so many pixels of them enlarged, have no drawing: they would fill a tablet. */
const MOST_WORDS = 5000;
const MOST_CROPPED = 120_000_000;
const TOO_MUCH_PRINT =
  "There is far more print on this page than a drawing has. Cut it down to the drawing, or clean it of specks, and read the words again.";

/** In line widths, beyond a letter: a bar of it may be hidden so far into the line that touches it. */
const HIDDEN = 1.5;

/** Every run of words on a page, cut out for a reader: level ones and upright ones, read from the bottom up. */
export function* wordBoxesOf(page: PreparedPage): Sliced<readonly WordCrop[]> {
  const whole = yield* asPart(letterInk(page), 0, 0.05);
  const far = yield* asPart(distancesToPaper(whole), 0.05, 0.2);
  const parted = yield* asPart(withoutLines(whole, page.lineWidth), 0.2, 0.35);
  const { ink, lines } = parted;
  const { labels, list } = yield* asPart(components(ink), 0.35, 0.5);
  const inked = factsOf(far, labels, parted, list.length);
  yield 0.6;
  const glyphs = glyphsOf(list, page.lineWidth, inked);
  const rows = yield* asPart(wordLinesOf(glyphs), 0.6, 0.7);
  const crops: WordCrop[] = [];
  const sized = rows.map((row) => ({ row, tall: letterHeight(row) }));
  const usual = usualHeight(sized);
  const likely = sized.filter(({ row, tall }) => mayBeWord(row, tall, usual));
  if (likely.length > MOST_WORDS) throw new Error(TOO_MUCH_PRINT);
  // What is no likely word may be the rest of one that a line parts; of a page full of such it would take too long.
  const beside = sized.filter(({ row, tall }) => row.glyphs.length > 1 || isUsual(tall, usual));
  const crossed = partedRows(
    (beside.length > MOST_WORDS ? likely : beside).map(({ row }) => row),
    lines,
    ink,
  );
  const inRows = new Uint8Array(list.length);
  for (const { row } of likely)
    for (const { numbers } of row.glyphs) for (const number of numbers) inRows[number] = 1;
  const source = { flat: page.flat, labels, lines, list, inRows };
  const reach = Math.ceil(HIDDEN * page.lineWidth);
  let cropped = 0;
  for (const [n, { row, tall }] of likely.entries()) {
    const box = boxAround(row.glyphs);
    const own = new Set(row.glyphs.flatMap(({ numbers }) => numbers.map((number) => number + 1)));
    const rowAt = { box, way: row.way, own, tall };
    const turn = USUAL_TURN[row.way];
    const aside = Math.round(ASIDE * tall);
    const isCut = row.glyphs.some(({ numbers }) =>
      numbers.some((number) => inked.cutBy[number] !== 0),
    );
    const room = longer(box, row.way, aside);
    cropped += (room.right - room.left + 1) * (room.bottom - room.top + 1) * timesFor(tall) ** 2;
    if (cropped > MOST_CROPPED) throw new Error(TOO_MUCH_PRINT);
    crops.push({
      box: inPicture(box, page.scale),
      turn,
      tall: tall / page.scale,
      isCapitals: isEven(row),
      isCut,
      isCrowded:
        crossed.has(row) ||
        hasBlot(row, inked) ||
        hasOtherInk(source, rowAt) ||
        goesOnTorn(source, rowAt),
      grey: cutCrop(source, room, turn, own, tall),
      bridged: isCut
        ? cutCrop(source, room, turn, own, tall, bridgeIn(row, tall, strokeOf(row, inked), reach))
        : null,
      aside: Math.round(aside * timesFor(tall)),
    });
    if (n % BATCH === BATCH - 1) yield 0.7 + (0.3 * n) / likely.length;
  }
  return crops;
}

/** A stroke so many times as thick as the row's usual one is a blot. */
const BLOT = 1.7;

function hasBlot({ glyphs }: WordLine, { thickest }: Inked): boolean {
  const thick = glyphs.map(({ numbers }) =>
    Math.max(...numbers.map((number) => thickest[number] as number)),
  );
  return Math.max(...thick) > BLOT * median(thick);
}

/** How wide the letters' strokes are, pixels. */
function strokeOf({ glyphs }: WordLine, { thickest }: Inked): number {
  const thick = glyphs.flatMap(({ numbers }) => numbers.map((n) => thickest[n] as number));
  return (2 * median(thick)) / STEPS_PER_PIXEL;
}

const median = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[list.length >> 1] as number;

function factsOf(
  distances: Uint8Array,
  labels: Int32Array,
  { level, upright, lines }: WithoutLines,
  count: number,
): Inked {
  const thickest = new Uint8Array(count);
  const cutBy = new Uint8Array(count);
  const { width } = level;
  // Between a letter and its line may lie the line's ragged edge, which was taken away with it.
  const isNextTo = ({ data }: Bits, at: number, step: number) =>
    data[at + step] || (lines.data[at + step] && data[at + 2 * step]);
  const touches = (bits: Bits, at: number) =>
    isNextTo(bits, at, -1) ||
    isNextTo(bits, at, 1) ||
    isNextTo(bits, at, -width) ||
    isNextTo(bits, at, width);
  for (let at = 0; at < labels.length; at++) {
    const number = (labels[at] as number) - 1;
    if (number < 0) continue;
    const far = distances[at] as number;
    if (far > (thickest[number] as number)) thickest[number] = far;
    const known = cutBy[number] as number;
    cutBy[number] =
      known | (touches(level, at) ? BY_LEVEL : 0) | (touches(upright, at) ? BY_UPRIGHT : 0);
  }
  return { thickest, cutBy };
}

interface Sized {
  readonly row: WordLine;
  /** Pixels of the page. */
  readonly tall: number;
}

/** So many letters in a row are no accident. */
const SURELY_WORD = 3;

/** How tall the letters of most of what are surely words are; 0 where there are none. */
function usualHeight(sized: readonly Sized[]): number {
  const heights = sized
    .filter(({ row }) => row.glyphs.length >= SURELY_WORD)
    .map(({ tall }) => tall)
    .sort((a, b) => a - b);
  return heights[heights.length >> 1] ?? 0;
}

/** In heights of the usual letters: one alone of another size is a piece of a symbol, two may be. */
const ALONE = [0.55, 1.45] as const;
const FEW = [0.4, 3] as const;
const MANY = [0.3, 6] as const;

const isUsual = (tall: number, usual: number): boolean =>
  tall >= ALONE[0] * usual && tall <= ALONE[1] * usual;

function mayBeWord({ glyphs, way }: WordLine, tall: number, usual: number): boolean {
  if (usual === 0) return true;
  const [least, most] = glyphs.length === 1 ? ALONE : glyphs.length < SURELY_WORD ? FEW : MANY;
  if (tall < least * usual || tall > most * usual) return false;
  if (way === "upright" && glyphs.length === 1) return false;
  const box = boxAround(glyphs);
  const [wide, high] = [box.right - box.left + 1, box.bottom - box.top + 1];
  return glyphs.length > 1 || wide <= 1.3 * high;
}

/** Small letters are 0.65 to 0.8 of a capital (common practice, no source); nothing of a capital's row is. */
const SMALL = [0.55, 0.86] as const;
/** Letters that stand on one line end so near to one another, in heights. */
const ON_LINE = 0.12;

/** Whether all letters are of one height; a slash, which sticks out at both ends, is not looked at. */
function isEven({ way, glyphs }: WordLine): boolean {
  const ends = glyphs.map(({ left, right, top, bottom }) =>
    way === "level" ? [top, bottom] : [left, right],
  ) as [number, number][];
  const feet = median(ends.map(([, foot]) => foot));
  const tallest = Math.max(...ends.map(([head]) => feet - head + 1));
  const standing = ends.filter(([, foot]) => Math.abs(foot - feet) <= ON_LINE * tallest);
  const tall = Math.max(...standing.map(([head, foot]) => foot - head + 1));
  return standing.every(([head, foot]) => {
    const height = foot - head + 1;
    return height < SMALL[0] * tall || height > SMALL[1] * tall;
  });
}

/** Of the tall letters, whatever small marks are among them. */
function letterHeight(row: WordLine): number {
  const heights = heightsOf(row).sort((a, b) => a - b);
  return heights[Math.floor(0.75 * (heights.length - 1))] as number;
}

/** Room for what is too faint or small to be counted as ink, such as a full stop. */
function longer({ left, top, right, bottom }: Box, way: WordLine["way"], by: number): Box {
  const [aside, across] = way === "level" ? [by, 0] : [0, by];
  return { left: left - aside, top: top - across, right: right + aside, bottom: bottom + across };
}

const heightsOf = ({ way, glyphs }: WordLine): number[] =>
  glyphs.map(({ left, right, top, bottom }) => (way === "level" ? bottom - top : right - left) + 1);

/** From pixels of the page, edges inside, to pixels of the picture. */
function inPicture({ left, top, right, bottom }: Box, scale: number): Box {
  return {
    left: left / scale,
    top: top / scale,
    right: (right + 1) / scale,
    bottom: (bottom + 1) / scale,
  };
}
