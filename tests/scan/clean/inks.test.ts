import { createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { cleaned } from "../../../src/scan/clean/cleaned.ts";
import { INKS, type Ink, inkClassesOf, layerOf } from "../../../src/scan/clean/inks.ts";
import { greyFrom, type Rgba } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import {
  blurred,
  box,
  type Colour,
  colourAt,
  sheet,
  WHITE,
} from "../../support/drawn-pages/marks.ts";

/** Lines three pixels thick, one an ink: upper edge, colour, what it is. */
const LINES: readonly (readonly [number, Colour, Ink])[] = [
  [10, [25, 25, 30], "black"],
  [25, [110, 110, 105], "black"],
  [40, [205, 40, 45], "red"],
  [55, [230, 120, 130], "red"],
  [70, [40, 60, 190], "blue"],
  [85, [110, 150, 235], "blue"],
  [100, [30, 140, 60], "other"],
  [115, [235, 200, 40], "other"],
];

function lined(): Rgba {
  const picture = sheet(200, 130);
  for (const [top, colour] of LINES) box(picture, 20, top, 180, top + 2, colour);
  return picture;
}

const inkAt = (classes: { width: number; data: Uint8Array }, x: number, y: number) => {
  const own = classes.data[y * classes.width + x] as number;
  return own === 0 ? "paper" : INKS[own - 1];
};

async function throughJpeg({ width, height, data }: Rgba, quality: number): Promise<Rgba> {
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  pen.putImageData(
    new ImageData(data.slice() as Uint8ClampedArray<ArrayBuffer>, width, height),
    0,
    0,
  );
  pen.drawImage(await loadImage(canvas.toBuffer("image/jpeg", quality)), 0, 0);
  return { width, height, data: pen.getImageData(0, 0, width, height).data };
}

describe("inks", () => {
  test.each(LINES)("are told by their hue (line at %i)", (top, _, ink) => {
    const classes = finished(inkClassesOf(lined()));
    for (let x = 20; x <= 180; x++) expect(inkAt(classes, x, top + 1)).toBe(ink);
    expect(inkAt(classes, 100, top + 8)).toBe("paper");
  });

  test.each(LINES)(
    "are the same at the soft edges of a line as in its middle (%i)",
    (top, _, ink) => {
      const classes = finished(inkClassesOf(blurred(lined())));
      for (let y = top - 1; y <= top + 3; y++)
        expect([ink, "paper"]).toContain(inkAt(classes, 100, y));
      expect(inkAt(classes, 100, top + 1)).toBe(ink);
    },
  );

  test("are told in the picture of a camera, which stores colour coarsely", async () => {
    const classes = finished(inkClassesOf(await throughJpeg(blurred(lined()), 75)));
    for (const [top, , ink] of LINES) {
      const right = Array.from({ length: 140 }, (_, x) => inkAt(classes, x + 30, top + 1)).filter(
        (found) => found === ink,
      );
      expect(right.length, `line at ${top}`).toBeGreaterThan(130);
    }
  });

  test("come apart as layers that hold all of the picture's ink between them", () => {
    const picture = blurred(lined());
    const classes = finished(inkClassesOf(picture));
    const layers = INKS.map((ink) => finished(layerOf(picture, classes, [ink])));
    for (const [n, layer] of layers.entries()) {
      for (const [top, , ink] of LINES) {
        const isOwn = ink === INKS[n];
        expect(colourAt(layer, 100, top + 1)).toEqual(
          isOwn ? colourAt(picture, 100, top + 1) : WHITE,
        );
      }
    }
    const greys = layers.map((layer) => greyFrom(layer).data);
    greyFrom(picture).data.forEach((value, at) => {
      const darkest = Math.min(...greys.map((grey) => grey[at] as number));
      if (darkest !== value) throw new Error(`pixel ${at}: ${value} became ${darkest}`);
    });
  });

  test("are kept apart as a step, on yellowed paper too", () => {
    const picture = lined();
    for (let at = 0; at < picture.data.length; at++) {
      if (at % 4 !== 3)
        picture.data[at] = (picture.data[at] as number) * ([0.9, 0.85, 0.7][at % 4] ?? 1);
    }
    const result = finished(cleaned(picture, [{ does: "inks", keep: ["red"] }]));
    for (const [top, , ink] of LINES) {
      const isWhite = colourAt(result, 100, top + 1).every((value) => value === 255);
      expect(isWhite, `line at ${top}`).toBe(ink !== "red");
    }
  });
});
