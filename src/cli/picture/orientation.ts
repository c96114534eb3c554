import { type Grey, greyOf } from "../../scan/index.ts";

/** How a camera was held: 1 upright, 2 to 8 as the Exif standard (CIPA DC-008, tag 0x0112) counts. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const ORIENTATION_TAG = 0x0112;
const SHORT = 3;
const EXIF = [0x45, 0x78, 0x69, 0x66, 0, 0];

/**
 * The orientation that a JPEG file notes in its Exif segment, before the first frame; 1 where there is
 * none, or none that can be read: a picture is not refused for what stands beside it.
 */
export function orientationOf(jpeg: Uint8Array): Orientation {
  let at = 2;
  while (at + 4 <= jpeg.length && jpeg[at] === 0xff) {
    const marker = jpeg[at + 1] as number;
    if (marker === 0xff) {
      at++;
      continue;
    }
    // The scan begins: what is noted comes before it.
    if (marker === 0xda || marker === 0xd9) break;
    const length = ((jpeg[at + 2] as number) << 8) | (jpeg[at + 3] as number);
    if (length < 2) break;
    const segment = jpeg.subarray(at + 4, at + 2 + length);
    if (marker === 0xe1 && EXIF.every((byte, n) => segment[n] === byte)) {
      return orientationIn(segment.subarray(EXIF.length));
    }
    at += 2 + length;
  }
  return 1;
}

/** The tag in the first directory of a TIFF header (TIFF 6.0, section 2). */
function orientationIn(tiff: Uint8Array): Orientation {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.length);
  const order = tiff.length >= 8 ? view.getUint16(0) : 0;
  const isLittle = order === 0x4949;
  if (!isLittle && order !== 0x4d4d) return 1;
  if (view.getUint16(2, isLittle) !== 42) return 1;
  const directory = view.getUint32(4, isLittle);
  if (directory + 2 > tiff.length) return 1;
  const count = view.getUint16(directory, isLittle);
  for (let n = 0; n < count; n++) {
    const entry = directory + 2 + 12 * n;
    if (entry + 12 > tiff.length) break;
    if (view.getUint16(entry, isLittle) !== ORIENTATION_TAG) continue;
    const value = view.getUint16(entry + 8, isLittle);
    const isKnown = view.getUint16(entry + 2, isLittle) === SHORT && value >= 1 && value <= 8;
    return isKnown ? (value as Orientation) : 1;
  }
  return 1;
}

/** The picture as its viewer shows it: turned and mirrored back. */
export function upright(grey: Grey, orientation: Orientation): Grey {
  if (orientation === 1) return grey;
  const { width, height, data } = grey;
  // From 5 on the stored rows stand as columns.
  const isOnSide = orientation >= 5;
  const out = isOnSide ? greyOf(height, width) : greyOf(width, height);
  const fromRight = [2, 3, 7, 8].includes(orientation);
  const fromBottom = [3, 4, 6, 7].includes(orientation);
  for (let y = 0, at = 0; y < out.height; y++) {
    for (let x = 0; x < out.width; x++, at++) {
      const [u, v] = isOnSide ? [y, x] : [x, y];
      const column = fromRight ? width - 1 - u : u;
      const row = fromBottom ? height - 1 - v : v;
      out.data[at] = data[row * width + column] as number;
    }
  }
  return out;
}
