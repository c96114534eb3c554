import { expect, test } from "vitest";
import { finished, greyOf, preparePage } from "../../../src/scan/index.ts";

/** A page of ink with so many specks of paper on it. */
function black(specks: number) {
  const grey = greyOf(300, 200);
  for (let n = 0; n < specks; n++) grey.data[(n * 7919 + 1) % grey.data.length] = 255;
  return grey;
}

test("a black page has no lines: no paper is there for them to be drawn on", () => {
  for (const specks of [0, 1, 40]) {
    const { places, ink } = finished(preparePage(black(specks)));
    expect(places, `${specks} specks`).toHaveLength(0);
    expect(ink.data.some(Boolean), `${specks} specks`).toBe(false);
  }
});

test("a broad bar is ink, though most of a small picture is bar", () => {
  const grey = greyOf(300, 200);
  grey.data.fill(255, 0, 300 * 50);
  expect(finished(preparePage(grey)).places.length).toBeGreaterThan(0);
});
