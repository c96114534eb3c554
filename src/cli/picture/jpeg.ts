import { decode } from "jpeg-js";
import { type Grey, greyFrom } from "../../scan/index.ts";
import { DamagedPicture, RefusedPicture } from "./damaged-picture.ts";
import { blocksIn, isByBrightness, type JpegFrame, jpegFrame } from "./jpeg-frame.ts";
import { orientationOf, upright } from "./orientation.ts";

/** Megabytes for unpacking: about 45 megapixels in full colour, 70 as cameras store them, 100 in grey. */
const MOST_MEGABYTES = 1024;
/** Bytes that unpacking takes for a square of eight by eight samples: as numbers, then as a picture. */
const BLOCK_BYTES = 256 + 64;
/** A picture that comes sharper scan by scan has about ten; each costs as much as a whole picture. */
const MOST_SCANS = 100;
/** Frames that are packed by Huffman's codes, in one go or scan by scan: what everybody writes. */
const USUAL_KINDS: readonly number[] = [0xc0, 0xc1, 0xc2];

/**
 * The picture of a JPEG file as its camera was held. What its header says is looked over before any of
 * it is unpacked. Throws DamagedPicture or RefusedPicture.
 */
export function readJpeg(bytes: Uint8Array): Grey {
  const frame = jpegFrame(bytes);
  if (!frame) throw new DamagedPicture("its header is not whole");
  lookOver(frame, bytes);
  const { width, height, data } = unpacked(bytes, frame);
  const pixels = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  return upright(greyFrom({ width, height, data: pixels }), orientationOf(bytes));
}

function lookOver(frame: JpegFrame, bytes: Uint8Array): void {
  const { kind, depth, width, height, colours, transform } = frame;
  if (!USUAL_KINDS.includes(kind) || depth !== 8) {
    throw new RefusedPicture("the JPEG is packed in a way that is not read here: save it as PNG");
  }
  const isKnown = colours.length === 1 || colours.length === 3;
  if (!isKnown && (colours.length !== 4 || transform === null)) {
    throw new RefusedPicture("the JPEG does not say what its colours are: save it as PNG");
  }
  // No code is shorter than a bit, and each square has one at least.
  const blocks = blocksIn(frame);
  if (8 * bytes.length < blocks) throw new DamagedPicture("most of it is missing");
  const needed = blocks * BLOCK_BYTES + width * height * (colours.length + 4);
  if (needed > MOST_MEGABYTES * 1024 * 1024) throw tooLarge(frame);
  if (scansIn(bytes) > MOST_SCANS) throw new DamagedPicture("it has far too many scans");
}

const tooLarge = ({ width, height }: JpegFrame) =>
  new RefusedPicture(
    `the JPEG of ${width} by ${height} pixels takes too much memory to unpack: save it as PNG, or smaller`,
  );

function unpacked(bytes: Uint8Array, frame: JpegFrame) {
  try {
    return decode(bytes, {
      useTArray: true,
      maxMemoryUsageInMB: MOST_MEGABYTES,
      colorTransform: frame.colours.length === 3 && isByBrightness(frame),
    });
  } catch (error) {
    const said = error instanceof Error ? error.message : "";
    if (/limit exceeded|allocate/.test(said)) throw tooLarge(frame);
    throw new DamagedPicture("it does not unpack");
  }
}

function scansIn(bytes: Uint8Array): number {
  let scans = 0;
  for (let at = bytes.indexOf(0xff); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    if (bytes[at + 1] === 0xda) scans++;
  }
  return scans;
}
