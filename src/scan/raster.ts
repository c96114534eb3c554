import { finished, inBands, type Sliced } from "./sliced.ts";

/** A grey picture, row by row from the top left: 0 is black, 255 white. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A colour picture as a canvas gives it: red, green, blue, opacity, a byte each. */
export interface Rgba {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** Ink and paper, a byte a pixel: 1 is ink. */
export interface Bits {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export const greyOf = (width: number, height: number): Grey => ({
  width,
  height,
  data: new Uint8Array(width * height),
});

export const bitsOf = (width: number, height: number): Bits => ({
  width,
  height,
  data: new Uint8Array(width * height),
});

/** Ink and paper from lines of text, `#` for ink: as worked examples are printed. */
export function bitsFromText(lines: readonly string[]): Bits {
  const bits = bitsOf(lines[0]?.length ?? 0, lines.length);
  lines.forEach((line, y) => {
    for (let x = 0; x < bits.width; x++) if (line[x] === "#") bits.data[y * bits.width + x] = 1;
  });
  return bits;
}

export function textFromBits({ width, height, data }: Bits): string[] {
  return Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_, x) => (data[y * width + x] ? "#" : " ")).join(""),
  );
}

/** As `greying`, in one go. */
export const greyFrom = (picture: Rgba): Grey => finished(greying(picture));

/** Brightness by the weights of ITU-R BT.601, which suit paper and ink; opacity over white. */
export function* greying(picture: Rgba): Sliced<Grey> {
  const { width, height, data } = picture;
  const grey = greyOf(width, height);
  const out = grey.data;
  yield* inBands(picture, (top, bottom) => {
    for (let at = top * width, from = 4 * at; at < bottom * width; at++, from += 4) {
      const opacity = data[from + 3] as number;
      const light =
        (data[from] as number) * 77 +
        (data[from + 1] as number) * 150 +
        (data[from + 2] as number) * 29;
      out[at] = opacity === 255 ? light >> 8 : (255 - ((255 - (light >> 8)) * opacity) / 255) | 0;
    }
  });
  return grey;
}
