import { crc32, deflateSync } from "node:zlib";
import type { Random } from "../../src/base/index.ts";

/** A kind of PNG (ISO/IEC 15948): every one can be made, whether or not anybody writes it. */
export interface PngKind {
  readonly width: number;
  readonly height: number;
  readonly depth: 1 | 2 | 4 | 8 | 16;
  readonly colourType: 0 | 2 | 3 | 4 | 6;
  readonly isInterlaced?: boolean;
  /** Red, green and blue of each entry. */
  readonly palette?: readonly number[];
  /** The bytes of the tRNS chunk. */
  readonly transparency?: readonly number[];
}

const CHANNELS = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 } as const;

export function chunk(type: string, data: Uint8Array): Uint8Array {
  const out = new Uint8Array(12 + data.length);
  const view = new DataView(out.buffer);
  view.setUint32(0, data.length);
  for (let n = 0; n < 4; n++) out[4 + n] = type.charCodeAt(n);
  out.set(data, 8);
  view.setUint32(8 + data.length, crc32(out.subarray(4, 8 + data.length)));
  return out;
}

export const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

export function headerChunk({ width, height, depth, colourType, isInterlaced }: PngKind) {
  const data = new Uint8Array(13);
  const view = new DataView(data.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  data.set([depth, colourType, 0, 0, isInterlaced ? 1 : 0], 8);
  return chunk("IHDR", data);
}

/** A PNG of random samples below `most`, every line packed by another of the five filters. */
export function madePng(random: Random, kind: PngKind, most = 2 ** kind.depth): Uint8Array {
  const lines = passesOf(kind).flatMap(([width, height]) =>
    filteredLines(
      Array.from({ length: height }, () => randomLine(random, kind, width, most)),
      Math.max(1, (CHANNELS[kind.colourType] * kind.depth) >> 3),
    ),
  );
  return pngOf(kind, deflateSync(Buffer.concat(lines)));
}

/** The file around pixels that are packed already, in two pieces. */
export function pngOf(kind: PngKind, packed: Uint8Array): Uint8Array {
  const half = packed.length >> 1;
  return Buffer.concat([
    SIGNATURE,
    headerChunk(kind),
    ...(kind.palette ? [chunk("PLTE", Uint8Array.from(kind.palette))] : []),
    ...(kind.transparency ? [chunk("tRNS", Uint8Array.from(kind.transparency))] : []),
    chunk("tEXt", Uint8Array.from(Buffer.from("Comment\0nothing of a picture"))),
    chunk("IDAT", packed.subarray(0, half)),
    chunk("IDAT", packed.subarray(half)),
    chunk("IEND", new Uint8Array()),
  ]);
}

/** Width and height of what is stored one after the other (8.2); the empty ones left out. */
function passesOf({ width, height, isInterlaced }: PngKind): readonly [number, number][] {
  if (!isInterlaced) return [[width, height]];
  const count = (size: number, first: number, every: number) =>
    Math.max(0, Math.floor((size - first + every - 1) / every));
  return (
    [
      [count(width, 0, 8), count(height, 0, 8)],
      [count(width, 4, 8), count(height, 0, 8)],
      [count(width, 0, 4), count(height, 4, 8)],
      [count(width, 2, 4), count(height, 0, 4)],
      [count(width, 0, 2), count(height, 2, 4)],
      [count(width, 1, 2), count(height, 0, 2)],
      [count(width, 0, 1), count(height, 1, 2)],
    ] as [number, number][]
  ).filter(([across, down]) => across > 0 && down > 0);
}

function randomLine(
  random: Random,
  { depth, colourType }: PngKind,
  width: number,
  most: number,
): Uint8Array {
  const samples = width * CHANNELS[colourType];
  const line = new Uint8Array(Math.ceil((samples * depth) / 8));
  for (let n = 0; n < samples; n++) {
    const value = random.below(most);
    if (depth === 16) line.set([value >> 8, value & 255], 2 * n);
    else {
      const bit = n * depth;
      line[bit >> 3] = (line[bit >> 3] as number) | (value << (8 - depth - (bit & 7)));
    }
  }
  return line;
}

function filteredLines(lines: readonly Uint8Array[], step: number): Uint8Array[] {
  return lines.map((line, n) => {
    const filter = n % 5;
    const at = (row: Uint8Array | undefined, place: number) =>
      place < 0 ? 0 : (row?.[place] ?? 0);
    const out = new Uint8Array(1 + line.length);
    out[0] = filter;
    for (let place = 0; place < line.length; place++) {
      const left = at(line, place - step);
      const above = at(lines[n - 1], place);
      const corner = at(lines[n - 1], place - step);
      const guess = [0, left, above, (left + above) >> 1, nearest(left, above, corner)][filter];
      out[1 + place] = at(line, place) - (guess ?? 0);
    }
    return out;
  });
}

/** Paeth's predictor (9.4): the neighbour nearest to left + above - corner, in this order. */
function nearest(left: number, above: number, corner: number): number {
  const aim = left + above - corner;
  return [left, above, corner].reduce((best, one) =>
    Math.abs(one - aim) < Math.abs(best - aim) ? one : best,
  );
}
