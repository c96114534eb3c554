import { type PaperTone, paperAlong, paperTones } from "../paper.ts";
import { greyOf, type Rgba } from "../raster.ts";
import { asPart, inBands, type Sliced } from "../sliced.ts";

/** In place: each of red, green and blue against the paper's own, so that paper becomes white. */
export function* flattenColours(picture: Rgba): Sliced<void> {
  const { width, data } = picture;
  const papers: PaperTone[] = [];
  for (const colour of [0, 1, 2]) {
    papers.push(yield* asPart(paperOf(picture, colour), colour / 12, (colour + 1) / 12));
  }
  const whites = papers.map(() => new Float32Array(width)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const [red, green, blue] = whites;
  const band = (top: number, bottom: number) => {
    for (let y = top, at = 4 * top * width; y < bottom; y++) {
      papers.forEach((paper, colour) => {
        paperAlong(paper, y, whites[colour] as Float32Array);
      });
      // The array's own clamping makes what is brighter than its paper 255.
      for (let x = 0; x < width; x++, at += 4) {
        data[at] = ((data[at] as number) * 255) / (red[x] as number);
        data[at + 1] = ((data[at + 1] as number) * 255) / (green[x] as number);
        data[at + 2] = ((data[at + 2] as number) * 255) / (blue[x] as number);
      }
    }
  };
  yield* asPart(inBands(picture, band), 0.25, 1);
}

/** Paper is even: of a large page so many pixels a side tell its tone as well as all. */
const ENOUGH = 1000;

/** The paper's tone in one colour, from every so manieth pixel of every so manieth row. */
function* paperOf({ width, height, data }: Rgba, colour: number): Sliced<PaperTone> {
  const every = Math.max(1, Math.floor(Math.min(width, height) / ENOUGH));
  const channel = greyOf(Math.ceil(width / every), Math.ceil(height / every));
  for (let y = 0, at = 0; y < height; y += every) {
    for (let x = 0; x < width; x += every, at++) {
      channel.data[at] = data[4 * (y * width + x) + colour] as number;
    }
  }
  yield 0.5;
  const paper = yield* asPart(paperTones(channel), 0.5, 1);
  return { ...paper, cell: paper.cell * every };
}
