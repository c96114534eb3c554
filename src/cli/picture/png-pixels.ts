import { DamagedPicture } from "./damaged-picture.ts";
import { PALETTE_COLOUR, type PngParts } from "./png-chunks.ts";

/** Turns the samples of a line into red, green, blue and opacity, as many pixels as `row` holds. */
export type LineReader = (line: Uint8Array, row: Uint8ClampedArray) => void;

export function lineReaderOf(png: PngParts): LineReader {
  const sample = sampleReader(png.depth);
  if (png.colourType === PALETTE_COLOUR) return paletteReader(png, sample);
  const most = 2 ** png.depth - 1;
  const byte = (value: number) => Math.round((value * 255) / most);
  const hasOpacity = png.channels % 2 === 0;
  const colours = png.channels - (hasOpacity ? 1 : 0);
  const hidden = hiddenOf(png, colours);
  return (line, row) => {
    for (let at = 0, from = 0; at < row.length; at += 4, from += png.channels) {
      const first = sample(line, from);
      const second = colours === 3 ? sample(line, from + 1) : first;
      const third = colours === 3 ? sample(line, from + 2) : first;
      const isHidden = hidden && first === hidden[0] && second === hidden[1] && third === hidden[2];
      row[at] = byte(first);
      row[at + 1] = byte(second);
      row[at + 2] = byte(third);
      row[at + 3] = hasOpacity ? byte(sample(line, from + colours)) : isHidden ? 0 : 255;
    }
  };
}

type SampleReader = (line: Uint8Array, n: number) => number;

function sampleReader(depth: number): SampleReader {
  if (depth === 8) return (line, n) => line[n] as number;
  if (depth === 16) {
    return (line, n) => ((line[2 * n] as number) << 8) | (line[2 * n + 1] as number);
  }
  // Several samples a byte, the leftmost in the highest bits.
  const most = (1 << depth) - 1;
  return (line, n) => {
    const bit = n * depth;
    return ((line[bit >> 3] as number) >> (8 - depth - (bit & 7))) & most;
  };
}

function paletteReader({ palette, transparency }: PngParts, sample: SampleReader): LineReader {
  const colours = palette ?? new Uint8Array();
  return (line, row) => {
    for (let at = 0, n = 0; at < row.length; at += 4, n++) {
      const entry = sample(line, n);
      if (3 * entry + 2 >= colours.length) {
        throw new DamagedPicture("a pixel of it has a colour that its palette lacks");
      }
      row[at] = colours[3 * entry] as number;
      row[at + 1] = colours[3 * entry + 1] as number;
      row[at + 2] = colours[3 * entry + 2] as number;
      row[at + 3] = transparency?.[entry] ?? 255;
    }
  };
}

/** The one colour that is see-through, as samples; null where none is. */
function hiddenOf({ transparency }: PngParts, colours: number): readonly number[] | null {
  if (!transparency || transparency.length < 2 * colours) return null;
  const at = (n: number) =>
    ((transparency[2 * n] as number) << 8) | (transparency[2 * n + 1] as number);
  return colours === 3 ? [at(0), at(1), at(2)] : [at(0), at(0), at(0)];
}
