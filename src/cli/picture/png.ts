import { Readable } from "node:stream";
import { createInflate } from "node:zlib";
import { type Grey, greyFrom, greyOf } from "../../scan/index.ts";
import { DamagedPicture } from "./damaged-picture.ts";
import { type PngParts, pngParts } from "./png-chunks.ts";
import { undoFilter } from "./png-filters.ts";
import { lineReaderOf } from "./png-pixels.ts";

/** Every so many pixels from a first one, across and down. */
interface Pass {
  readonly left: number;
  readonly top: number;
  readonly across: number;
  readonly down: number;
}

const WHOLE: readonly Pass[] = [{ left: 0, top: 0, across: 1, down: 1 }];
/** The seven passes of an interlaced PNG (ISO/IEC 15948, 8.2: Adam7). */
const INTERLACED: readonly Pass[] = [
  { left: 0, top: 0, across: 8, down: 8 },
  { left: 4, top: 0, across: 8, down: 8 },
  { left: 0, top: 4, across: 4, down: 8 },
  { left: 2, top: 0, across: 4, down: 4 },
  { left: 0, top: 2, across: 2, down: 4 },
  { left: 1, top: 0, across: 2, down: 2 },
  { left: 0, top: 1, across: 1, down: 2 },
];

/**
 * The picture of a PNG file over white paper. It is unpacked line by line, so that no more memory is
 * taken than the grey pixels need, whatever the file would unpack to: the packages tried instead unpack
 * interlaced files without limit, or never answer for one that lacks lines. Throws DamagedPicture.
 */
export async function readPng(bytes: Uint8Array): Promise<Grey> {
  const png = pngParts(bytes);
  const grey = greyOf(png.width, png.height);
  const lines = linesInto(grey, png);
  lines.next();
  const inflate = createInflate();
  Readable.from(png.packed).pipe(inflate);
  let isWhole = false;
  try {
    for await (const chunk of inflate) {
      // What comes after the last line belongs to nothing.
      if (isWhole) break;
      isWhole = lines.next(chunk as Uint8Array).done === true;
    }
  } catch (error) {
    throw error instanceof DamagedPicture ? error : new DamagedPicture("it does not unpack");
  }
  if (!isWhole) throw new DamagedPicture("lines of it are missing");
  return grey;
}

/** Takes unpacked bytes piece by piece and is done when every pixel of `grey` is there. */
function* linesInto(grey: Grey, png: PngParts): Generator<void, void, Uint8Array> {
  const bits = png.channels * png.depth;
  const step = Math.max(1, bits >> 3);
  const readLine = lineReaderOf(png);
  let piece: Uint8Array = new Uint8Array();
  for (const { left, top, across, down } of png.isInterlaced ? INTERLACED : WHOLE) {
    const width = Math.ceil((grey.width - left) / across);
    const height = Math.ceil((grey.height - top) / down);
    if (width <= 0 || height <= 0) continue;
    const row = { width, height: 1, data: new Uint8ClampedArray(4 * width) };
    let line = new Uint8Array(1 + Math.ceil((width * bits) / 8));
    let above = new Uint8Array(line.length);
    for (let n = 0; n < height; n++) {
      for (let got = 0; got < line.length; ) {
        if (piece.length === 0) piece = yield;
        const taken = piece.subarray(0, line.length - got);
        line.set(taken, got);
        got += taken.length;
        piece = piece.subarray(taken.length);
      }
      const samples = line.subarray(1);
      undoFilter(line[0] as number, samples, above.subarray(1), step);
      readLine(samples, row.data);
      const out = greyFrom(row).data;
      const start = (top + n * down) * grey.width + left;
      if (across === 1) grey.data.set(out, start);
      else for (let x = 0; x < width; x++) grey.data[start + x * across] = out[x] as number;
      [line, above] = [above, line];
    }
  }
}
