/** What a JPEG file says of its picture before the picture itself (ISO/IEC 10918-1, B.2). */
export interface JpegFrame {
  /** The last byte of its marker: 0xc0 to 0xcf, how the picture is packed. */
  readonly kind: number;
  /** Bits a sample. */
  readonly depth: number;
  readonly width: number;
  readonly height: number;
  /** Its colours, each with how many samples of it there are across and down to those of the others. */
  readonly colours: readonly { readonly id: number; readonly h: number; readonly v: number }[];
  /** The colour transform in Adobe's note (APP14): 0 for none; null where the file has no such note. */
  readonly transform: number | null;
  /** Whether it is marked as JFIF, whose colours are always brightness and two differences. */
  readonly isJfif: boolean;
}

const APP0 = 0xe0;
const APP14 = 0xee;
const SCAN = 0xda;
/** A marker that has no length after it: a restart, or one for private use. */
const standsAlone = (marker: number) => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
/** Tables and a reserved code in the range of the frames' markers. */
const NO_FRAMES: readonly number[] = [0xc4, 0xc8, 0xcc];

const says = (segment: Uint8Array, name: string) =>
  [...name].every((letter, n) => segment[n] === letter.charCodeAt(0));

/** Reads the marker segments up to the first frame; null where there is none, or none that is whole. */
export function jpegFrame(bytes: Uint8Array): JpegFrame | null {
  let transform: number | null = null;
  let isJfif = false;
  for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff; ) {
    const marker = bytes[at + 1] as number;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (standsAlone(marker)) {
      at += 2;
      continue;
    }
    if (marker === SCAN) return null;
    const length = ((bytes[at + 2] as number) << 8) | (bytes[at + 3] as number);
    const segment = bytes.subarray(at + 4, at + 2 + length);
    if (length < 2 || segment.length < length - 2) return null;
    if (marker === APP0 && says(segment, "JFIF\0")) isJfif = true;
    if (marker === APP14 && says(segment, "Adobe") && segment.length >= 12)
      transform = segment[11] as number;
    if (marker >= 0xc0 && marker <= 0xcf && !NO_FRAMES.includes(marker)) {
      const frame = frameIn(segment);
      return frame && { kind: marker, ...frame, transform, isJfif };
    }
    at += 2 + length;
  }
  return null;
}

function frameIn(segment: Uint8Array) {
  const [depth, high, low, wide, narrow, count] = segment as unknown as number[];
  if (count === undefined || count === 0 || segment.length < 6 + 3 * count) return null;
  const colours = Array.from({ length: count }, (_, n) => {
    const [id, samples] = segment.subarray(6 + 3 * n) as unknown as [number, number];
    return { id, h: samples >> 4, v: samples & 15 };
  });
  if (colours.some(({ h, v }) => h < 1 || h > 4 || v < 1 || v > 4)) return null;
  return {
    depth: depth as number,
    width: ((wide as number) << 8) | (narrow as number),
    height: ((high as number) << 8) | (low as number),
    colours,
  };
}

/** Squares of eight by eight samples that its colours are packed in, all of them together. */
export function blocksIn({ width, height, colours }: JpegFrame): number {
  const most = (of: "h" | "v") => Math.max(...colours.map((colour) => colour[of]));
  const [h, v] = [most("h"), most("v")];
  return colours.reduce(
    (sum, colour) =>
      sum + Math.ceil((width * colour.h) / (8 * h)) * Math.ceil((height * colour.v) / (8 * v)),
    0,
  );
}

/**
 * Whether three colours are brightness and two differences, and not red, green and blue: by what is
 * noted beside them, else by their names, as the Independent JPEG Group's library takes it (libjpeg.txt,
 * "Special color spaces").
 */
export function isByBrightness({ colours, transform, isJfif }: JpegFrame): boolean {
  if (isJfif) return true;
  if (transform !== null) return transform !== 0;
  return String.fromCharCode(...colours.map(({ id }) => id)) !== "RGB";
}
