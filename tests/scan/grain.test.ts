import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { withoutGrain } from "../../src/scan/grain.ts";
import { preparePage } from "../../src/scan/lines/prepared-page.ts";
import { type Grey, greyOf } from "../../src/scan/raster.ts";
import { finished } from "../../src/scan/sliced.ts";

const SIZE = 240;

/** Faded lines four pixels wide, in grain of so many steps of 255. */
function page(grain: number): Grey {
  const random = seededRandom(5);
  const grey = greyOf(SIZE, SIZE);
  for (let at = 0; at < grey.data.length; at++) {
    const isLine = at % SIZE >= 20 && at % SIZE < 220 && Math.floor(at / SIZE) % 40 < 4;
    const noise = random.next() + random.next() + random.next() + random.next() - 2;
    const value = (isLine ? 130 : 230) + (noise * grain) / 0.577;
    grey.data[at] = Math.max(0, Math.min(255, value));
  }
  return grey;
}

test("a page with little grain stays as it is", () => {
  const flat = greyOf(SIZE, SIZE);
  flat.data.fill(250);
  expect(finished(withoutGrain(flat))).toBe(flat);
});

test("lines of a faded page in strong grain are found, at their width, and little else", () => {
  const { places, lineWidth, scale } = finished(preparePage(page(30)));
  expect(scale).toBe(1);
  expect(lineWidth).toBeGreaterThan(3);
  expect(lineWidth).toBeLessThan(5.5);
  // Six lines of 200 pixels each.
  const onLines = Array.from(places).filter((at) => Math.floor(at / SIZE) % 40 < 6);
  expect(onLines.length).toBeGreaterThan(1000);
  expect(places.length - onLines.length).toBeLessThan(60);
});
