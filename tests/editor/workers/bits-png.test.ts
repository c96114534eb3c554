import { createCanvas, loadImage } from "@napi-rs/canvas";
import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { bitsPng } from "../../../src/editor/workers/bits-png.ts";
import { pictureType } from "../../../src/job/index.ts";

test.each([1, 7, 8, 9, 33])(
  "a black and white picture %i wide is read back as it was",
  async (width) => {
    const random = seededRandom(width);
    const height = 5;
    const data = new Uint8ClampedArray(4 * width * height).fill(255);
    for (let at = 0; at < data.length; at += 4) {
      if (random.next() < 0.5) data.fill(0, at, at + 3);
    }
    const png = await bitsPng({ width, height, data });
    expect(pictureType(png, "a.png")).toMatchObject({
      ok: true,
      value: { type: "image/png", width, height },
    });
    const image = await loadImage(Buffer.from(png));
    const pen = createCanvas(width, height).getContext("2d");
    pen.drawImage(image, 0, 0);
    expect([...pen.getImageData(0, 0, width, height).data]).toEqual([...data]);
  },
);

test("a page of lines takes less than a bit a pixel", async () => {
  const [width, height] = [800, 600];
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0; y < height; y += 50) data.fill(0, 4 * y * width, 4 * (y + 1) * width);
  expect((await bitsPng({ width, height, data })).length).toBeLessThan((width * height) / 8 / 10);
});
