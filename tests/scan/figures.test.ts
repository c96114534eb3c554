import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { boundsOf, type Point, seededRandom } from "../../src/base/index.ts";
import { greyFrom, type Rgba } from "../../src/scan/raster.ts";
import { type Harm, type Harmed, harmed, NO_HARM } from "../support/drawn-pages/degrade.ts";
import { tracedPicture } from "../support/drawn-pages/traced-picture.ts";
import { DIRECT_CURRENT } from "./figures/direct-current.ts";
import type { Figure } from "./figures/figure.ts";
import { SWITCHING } from "./figures/switching.ts";

/** Figures of T. R. Kuphaldt, "Lessons in Electric Circuits" (Design Science License), not kept here. */
const FIGURES = fileURLToPath(new URL("../../../shared/figures", import.meta.url));

/** `PINTRUTH_SEED` harms them otherwise. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

/** A scanned page of a book, and a photo of one which lies open on a table. */
const SCANNED: Harm = {
  ...NO_HARM,
  skew: 1.6,
  blur: 0.8,
  noise: 8,
  shade: 0.3,
  jpeg: 70,
  fade: 60,
};
const PHOTOGRAPHED: Harm = { ...SCANNED, skew: 0, slant: 0.6 };

/** White round a figure, in its pixels, as a page has it. */
const MARGIN = 24;

/** A figure on white, so many times as large. */
async function pictureOf({ file }: Figure, times: number): Promise<Rgba> {
  const image = await loadImage(join(FIGURES, file));
  const [width, height] = [image.width + 2 * MARGIN, image.height + 2 * MARGIN].map(
    (side) => side * times,
  ) as [number, number];
  const pen = createCanvas(width, height).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingEnabled = times > 1;
  const edge = MARGIN * times;
  pen.drawImage(image, edge, edge, image.width * times, image.height * times);
  return { width, height, data: pen.getImageData(0, 0, width, height).data };
}

/** The nets that are found, each its terminals in order. */
function netsFound(figure: Figure, times: number, picture: Rgba, moved: Harmed["moved"]) {
  const place = ([x, y]: Point) => moved([(x + 0.5 + MARGIN) * times, (y + 0.5 + MARGIN) * times]);
  const parts = Object.values(figure.parts).flatMap(
    ([left, top, right, bottom]) =>
      boundsOf(
        [
          [left, top] as const,
          [right, top] as const,
          [right, bottom] as const,
          [left, bottom] as const,
        ].map(place),
      ) ?? [],
  );
  const terminals = Object.fromEntries(
    Object.entries(figure.terminals).map(([name, at]) => [name, place(at)]),
  );
  const { nets } = tracedPicture(greyFrom(picture), { terminals, parts });
  return sorted(nets.map((net) => net.terminals));
}

const sorted = (lists: readonly (readonly string[])[]) =>
  lists.map((names) => [...names].sort().join(" ")).sort();

const isThere = existsSync(FIGURES);
if (!isThere) console.warn(`Skipped: the book's figures are not at ${FIGURES}.`);

describe.skipIf(!isThere)("figures of a book", () => {
  for (const figure of [...DIRECT_CURRENT, ...SWITCHING]) {
    test.each([1, 2])(`${figure.file} at %dx: every net as it is lettered`, async (times) => {
      const picture = await pictureOf(figure, times);
      expect(netsFound(figure, times, picture, (at) => at)).toEqual(sorted(figure.nets));
    });

    test.each([
      ["scanned askew", SCANNED],
      ["photographed at a slant", PHOTOGRAPHED],
    ] as const)(
      `${figure.file} %s: every net as it is lettered`,
      async (_, harm) => {
        const page = await pictureOf(figure, 2);
        const { picture, moved } = await harmed(seededRandom(SEED), page, harm, 3);
        expect(netsFound(figure, 2, picture, moved), `PINTRUTH_SEED=${SEED}`).toEqual(
          sorted(figure.nets),
        );
      },
      120_000,
    );
  }
});
