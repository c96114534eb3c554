import { type Bits, bitsOf } from "./raster.ts";
import { inBands, type Sliced } from "./sliced.ts";

/**
 * Ink and paper, a bit a pixel: 32 pixels to a number, the leftmost its lowest bit, and every row begins
 * with a number of its own. What takes its time by the numbers passes over paper in no time.
 */
export interface PackedBits {
  readonly width: number;
  readonly height: number;
  /** Numbers a row. */
  readonly across: number;
  readonly words: Int32Array;
}

export function packedBitsOf(width: number, height: number): PackedBits {
  const across = (width + 31) >>> 5;
  return { width, height, across, words: new Int32Array(across * height) };
}

/** The number of the lowest bit of a word that is not 0. */
export const lowestBit = (word: number): number => 31 - Math.clz32(word & -word);

/** Sets those of four bits, the lowest the pixel at `x`, that are ink in a row that begins at `row`. */
export function putFour(words: Int32Array, row: number, x: number, four: number): void {
  const word = row + (x >> 5);
  const shift = x & 31;
  words[word] = (words[word] as number) | (four << shift);
  if (shift > 28) words[word + 1] = (words[word + 1] as number) | (four >>> (32 - shift));
}

/** Whether the pixel there is ink. */
export const isInk = ({ across, words }: PackedBits, x: number, y: number): boolean =>
  (((words[y * across + (x >> 5)] as number) >>> (x & 31)) & 1) === 1;

/** Makes the pixel at a place ink. */
export function put({ width, across, words }: PackedBits, at: number): void {
  const [x, y] = [at % width, Math.floor(at / width)];
  const word = y * across + (x >> 5);
  words[word] = (words[word] as number) | (1 << (x & 31));
}

/** Makes the pixel at a place paper. */
export function take({ width, across, words }: PackedBits, at: number): void {
  const [x, y] = [at % width, Math.floor(at / width)];
  const word = y * across + (x >> 5);
  words[word] = (words[word] as number) & ~(1 << (x & 31));
}

/** The lowest bits of four bytes, the other bits of which are 0, as four bits. */
export const fourOf = (bytes: number): number => Math.imul(bytes, 0x01020408) >>> 24;

/** As many bytes as a picture has pixels, four to a number; of pixels that lie askew in memory a copy. */
export function wordsOf(data: Uint8Array): Int32Array {
  const bytes = data.byteOffset % 4 === 0 ? data : data.slice();
  return new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
}

/** The same picture, packed. */
export function* packed(bits: Bits): Sliced<PackedBits> {
  const { width, height, data } = bits;
  const out = packedBitsOf(width, height);
  const { words, across } = out;
  const bytes = wordsOf(data);
  yield* inBands(bits, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      const [row, start, end] = [y * across, y * width, (y + 1) * width];
      let at = start;
      for (; at < end && at & 3; at++) if (data[at]) putFour(words, row, at - start, 1);
      for (; at + 4 <= end; at += 4) {
        const four = bytes[at >> 2] as number;
        if (four !== 0) putFour(words, row, at - start, fourOf(four));
      }
      for (; at < end; at++) if (data[at]) putFour(words, row, at - start, 1);
    }
  });
  return out;
}

/** The same picture, a byte a pixel. */
export function* unpacked(picture: PackedBits): Sliced<Bits> {
  const { width, height, across, words } = picture;
  const bits = bitsOf(width, height);
  const { data } = bits;
  yield* inBands(picture, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let column = 0; column < across; column++) {
        let word = words[y * across + column] as number;
        const start = y * width + (column << 5);
        for (; word !== 0; word &= word - 1) data[start + lowestBit(word)] = 1;
      }
    }
  });
  return bits;
}

/** The places of all pixels of ink, in order: y times width plus x. */
export function* placesIn(picture: PackedBits): Sliced<Int32Array> {
  const { width, across, words } = picture;
  const places = new Int32Array(inkIn(picture));
  let found = 0;
  yield* inBands(picture, (top, bottom) => {
    for (let y = top; y < bottom; y++) {
      for (let column = 0; column < across; column++) {
        let word = words[y * across + column] as number;
        const start = y * width + (column << 5);
        for (; word !== 0; word &= word - 1) places[found++] = start + lowestBit(word);
      }
    }
  });
  return places;
}

/** How many bits of a word are set. */
export function bitsIn(word: number): number {
  const twos = word - ((word >>> 1) & 0x55555555);
  const fours = (twos & 0x33333333) + ((twos >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** How many pixels are ink. */
export function inkIn({ words }: PackedBits): number {
  let count = 0;
  for (let n = 0; n < words.length; n++) if (words[n] !== 0) count += bitsIn(words[n] as number);
  return count;
}
