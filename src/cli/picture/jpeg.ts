import { decode } from "jpeg-js";
import { type Grey, greyFrom } from "../../scan/index.ts";
import { DamagedPicture } from "./damaged-picture.ts";
import { orientationOf, upright } from "./orientation.ts";

/** Megabytes for unpacking: about 45 megapixels in full colour, 70 as cameras store them, 100 in grey. */
const MOST_MEGABYTES = 1024;
/** A picture that comes sharper scan by scan has about ten; each costs as much as a whole picture. */
const MOST_SCANS = 100;

/** Thrown for a JPEG that is whole, as far as anyone can tell, but would take too much memory. */
export class TooLargeJpeg extends Error {}

/** The picture of a JPEG file as its camera was held. Throws DamagedPicture or TooLargeJpeg. */
export function readJpeg(bytes: Uint8Array): Grey {
  if (scansIn(bytes) > MOST_SCANS) throw new DamagedPicture("it has far too many scans");
  const { width, height, data } = unpacked(bytes);
  const pixels = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  return upright(greyFrom({ width, height, data: pixels }), orientationOf(bytes));
}

function unpacked(bytes: Uint8Array) {
  try {
    return decode(bytes, { useTArray: true, maxMemoryUsageInMB: MOST_MEGABYTES });
  } catch (error) {
    const said = error instanceof Error ? error.message : "";
    if (/limit exceeded|allocate/.test(said)) throw new TooLargeJpeg();
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
