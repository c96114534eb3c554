/** A JPEG (ISO/IEC 10918-1) of one plain colour, in any kind that there is, whether or not anybody writes it. */
export interface JpegKind {
  readonly width: number;
  readonly height: number;
  /** Its colours: what each is called, its tone, 0 to 255, and how many samples of it there are. */
  readonly colours: readonly {
    readonly id: number;
    readonly tone: number;
    readonly h?: number;
    readonly v?: number;
  }[];
  /** The last byte of the frame's marker; 0xc0, the plainest, where it is left out. */
  readonly kind?: number;
  /** Bits a sample, as the frame says. */
  readonly depth?: number;
  /** The colour transform in Adobe's note; no such note where it is left out. */
  readonly transform?: number;
  readonly isJfif?: boolean;
}

const segment = (marker: number, data: readonly number[]) => [
  0xff,
  marker,
  (data.length + 2) >> 8,
  (data.length + 2) & 255,
  ...data,
];
const letters = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const word = (value: number) => [value >> 8, value & 255];

/** All up to the squares of the picture itself. */
export function jpegHead(jpeg: JpegKind): Uint8Array {
  const { width, height, colours, kind = 0xc0, depth = 8, transform, isJfif } = jpeg;
  const frame = colours.flatMap(({ id, h = 1, v = 1 }) => [id, (h << 4) | v, 0]);
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...(isJfif ? segment(0xe0, [...letters("JFIF\0"), 1, 1, 0, 0, 1, 0, 1, 0, 0]) : []),
    ...(transform === undefined
      ? []
      : segment(0xee, [...letters("Adobe"), 0, 100, 0, 0, 0, 0, transform])),
    // Numbers stand as they are; twelve codes of four bits, and one of a bit: "nothing more".
    ...segment(0xdb, [0, ...Array<number>(64).fill(1)]),
    ...segment(kind, [depth, ...word(height), ...word(width), colours.length, ...frame]),
    ...segment(0xc4, [0, 0, 0, 0, 12, ...Array<number>(12).fill(0), ...Array(12).keys()]),
    ...segment(0xc4, [0x10, 1, ...Array<number>(15).fill(0), 0]),
    ...segment(0xda, [colours.length, ...colours.flatMap(({ id }) => [id, 0]), 0, 63, 0]),
  ]);
}

/** The whole file. */
export function madeJpeg(jpeg: JpegKind): Uint8Array {
  const { width, height, colours } = jpeg;
  const most = (of: "h" | "v") => Math.max(...colours.map((colour) => colour[of] ?? 1));
  const squares = Math.ceil(width / (8 * most("h"))) * Math.ceil(height / (8 * most("v")));
  let bits = "";
  for (let n = 0; n < squares; n++) {
    for (const { tone, h = 1, v = 1 } of colours) {
      // Each first square of a colour says how far it is from the middle, those after it: no further.
      for (let k = 0; k < h * v; k++) bits += n + k === 0 ? stepTo(8 * (tone - 128)) : "00000";
    }
  }
  const bytes = (bits.match(/.{1,8}/g) ?? []).flatMap((eight) => {
    const byte = Number.parseInt(eight.padEnd(8, "1"), 2);
    return byte === 0xff ? [0xff, 0] : [byte];
  });
  return Buffer.concat([jpegHead(jpeg), Uint8Array.from([...bytes, 0xff, 0xd9])]);
}

/** How many bits, the bits themselves (a number below zero as one less, F.1.2.1), and that nothing follows. */
function stepTo(value: number): string {
  const size = value === 0 ? 0 : Math.floor(Math.log2(Math.abs(value))) + 1;
  const bits = value < 0 ? value + 2 ** size - 1 : value;
  return `${size.toString(2).padStart(4, "0")}${size === 0 ? "" : bits.toString(2).padStart(size, "0")}0`;
}
