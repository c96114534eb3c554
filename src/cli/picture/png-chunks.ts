import { crc32 } from "node:zlib";
import { DamagedPicture } from "./damaged-picture.ts";

/** Colour types of PNG (ISO/IEC 15948, 11.2.2), each with its samples a pixel and its bits a sample. */
const COLOUR_TYPES: Readonly<Record<number, { channels: number; depths: readonly number[] }>> = {
  0: { channels: 1, depths: [1, 2, 4, 8, 16] },
  2: { channels: 3, depths: [8, 16] },
  3: { channels: 1, depths: [1, 2, 4, 8] },
  4: { channels: 2, depths: [8, 16] },
  6: { channels: 4, depths: [8, 16] },
};
export const PALETTE_COLOUR = 3;

export interface PngParts {
  readonly width: number;
  readonly height: number;
  /** Bits a sample. */
  readonly depth: number;
  readonly colourType: number;
  readonly channels: number;
  readonly isInterlaced: boolean;
  /** Red, green and blue of each entry. */
  readonly palette: Uint8Array | null;
  /** Opacity of palette entries, or the one grey or colour that is see-through, 16 bits a sample. */
  readonly transparency: Uint8Array | null;
  /** The packed pixels, in pieces. */
  readonly packed: readonly Uint8Array[];
}

const WANTED: ReadonlySet<string> = new Set(["IHDR", "PLTE", "tRNS", "IDAT"]);
const SIGNATURE_BYTES = 8;

const longAt = (bytes: Uint8Array, at: number) =>
  new DataView(bytes.buffer, bytes.byteOffset).getUint32(at);

/** What a PNG file says of its pixels; all that is only beside them is passed over unopened. */
export function pngParts(bytes: Uint8Array): PngParts {
  let header: Uint8Array | null = null;
  let palette: Uint8Array | null = null;
  let transparency: Uint8Array | null = null;
  const packed: Uint8Array[] = [];
  for (let at = SIGNATURE_BYTES; at + 12 <= bytes.length; ) {
    const length = longAt(bytes, at);
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (type === "IEND") break;
    const end = at + 8 + length;
    if (end + 4 > bytes.length) throw new DamagedPicture("it ends in the middle");
    if (WANTED.has(type) && crc32(bytes.subarray(at + 4, end)) !== longAt(bytes, end)) {
      throw new DamagedPicture("some of its bytes have changed");
    }
    const data = bytes.subarray(at + 8, end);
    if (type === "IHDR") header ??= data;
    else if (type === "PLTE") palette ??= data;
    else if (type === "tRNS") transparency ??= data;
    else if (type === "IDAT") packed.push(data);
    at = end + 4;
  }
  if (header?.length !== 13) throw new DamagedPicture("its header is missing");
  const [depth, colourType, , , interlace] = header.subarray(8) as unknown as number[];
  const kind = COLOUR_TYPES[colourType ?? -1];
  if (!kind?.depths.includes(depth ?? 0) || (interlace ?? 2) > 1) {
    throw new DamagedPicture("its header names a kind of pixels that PNG does not have");
  }
  if (colourType === PALETTE_COLOUR && !palette) throw new DamagedPicture("its palette is missing");
  return {
    width: longAt(header, 0),
    height: longAt(header, 4),
    depth: depth as number,
    colourType: colourType as number,
    channels: kind.channels,
    isInterlaced: interlace === 1,
    palette,
    transparency,
    packed,
  };
}
