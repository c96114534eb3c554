import { describe, expect, test } from "vitest";
import { cleaned } from "../../../src/scan/clean/cleaned.ts";
import { type CleanStep, USUAL_STEPS } from "../../../src/scan/clean/step.ts";
import { greyFrom, type Rgba } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { BLACK, box, colourAt, sheet, WHITE } from "../../support/drawn-pages/marks.ts";

const run = (picture: Rgba, ...steps: CleanStep[]) => finished(cleaned(picture, steps));
const ALL = Object.values(USUAL_STEPS);

describe("cleaning", () => {
  test("keeps the original, and gives it again when no step is left", () => {
    const picture = sheet(60, 40, [210, 200, 170]);
    box(picture, 10, 10, 50, 12);
    const before = picture.data.slice();
    const result = run(picture, ...ALL);
    expect(picture.data).toEqual(before);
    expect(result.data).not.toEqual(before);
    expect(run(picture).data).toEqual(before);
  });

  test("a step left out is as if it had never been", () => {
    const picture = sheet(60, 40, [210, 200, 170]);
    box(picture, 10, 10, 50, 12, [90, 90, 90]);
    const { flatten, contrast } = USUAL_STEPS;
    expect(run(picture, flatten).data).not.toEqual(run(picture, flatten, contrast).data);
    expect(run(picture, flatten).data).toEqual(run(picture, flatten).data);
  });

  test("tells how far it is, never going back, up to the end", () => {
    const done = [...cleaned(sheet(900, 900), ALL)];
    expect(done.every((share, n) => n === 0 || share >= (done[n - 1] as number))).toBe(true);
    expect(done[done.length - 1]).toBeCloseTo(1, 9);
    expect(done.length).toBeGreaterThan(10);
  });

  test.each([
    ["one pixel", sheet(1, 1, BLACK)],
    ["all white", sheet(90, 70)],
    ["all black", sheet(90, 70, [0, 0, 0])],
    ["a strip", sheet(300, 1, [100, 100, 100])],
    ["nothing", sheet(0, 0)],
  ])("never throws: %s", (_, picture) => {
    for (const step of ALL) expect(run(picture, step).data.length).toBe(picture.data.length);
    expect(run(picture, ...ALL).data.length).toBe(picture.data.length);
  });

  test("takes what is see-through for paper", () => {
    const picture: Rgba = { width: 1, height: 1, data: Uint8ClampedArray.from([0, 0, 0, 0]) };
    expect([...run(picture).data]).toEqual([255, 255, 255, 255]);
  });
});

describe("flattening", () => {
  test("makes yellowed paper under a shadow white and leaves ink dark and in its colour", () => {
    const picture = sheet(640, 480);
    box(picture, 100, 200, 540, 204, [30, 30, 30]);
    box(picture, 100, 300, 540, 304, [200, 30, 30]);
    const paper = [1, 0.95, 0.75];
    for (let at = 0; at < picture.data.length; at++) {
      if (at % 4 === 3) continue;
      const shade = 1 - 0.5 * (((at >> 2) % 640) / 640);
      picture.data[at] = (picture.data[at] as number) * 0.9 * shade * (paper[at % 4] as number);
    }
    const flat = run(picture, USUAL_STEPS.flatten);
    for (const x of [20, 320, 620]) {
      for (const y of [20, 150, 460]) {
        for (const value of colourAt(flat, x, y)) expect(value).toBeGreaterThan(246);
      }
    }
    for (const x of [120, 320, 520]) {
      for (const value of colourAt(flat, x, 202)) expect(value).toBeLessThan(45);
      const [red, green, blue] = colourAt(flat, x, 302);
      expect(red).toBeGreaterThan(180);
      expect(Math.max(green, blue)).toBeLessThan(45);
    }
  });
});

describe("contrast", () => {
  test("stretches between its two levels and no further", () => {
    const picture = sheet(4, 1);
    for (const [x, value] of [40, 90, 140, 200].entries()) {
      box(picture, x, 0, x, 0, [value, value, value]);
    }
    // (90 - 40) / (140 - 40) of 255 is 127.5.
    const result = run(picture, { does: "contrast", black: 40, white: 140 });
    expect([...greyFrom(result).data]).toEqual([0, 128, 255, 255]);
  });
});

test("black and white leaves nothing between", () => {
  const picture = sheet(120, 90, [200, 190, 160]);
  box(picture, 20, 40, 100, 42, [90, 80, 80]);
  const result = run(picture, USUAL_STEPS["black-and-white"]);
  expect(new Set(greyFrom(result).data)).toEqual(new Set([0, 255]));
  expect(colourAt(result, 60, 41)).toEqual([0, 0, 0]);
  expect(colourAt(result, 60, 60)).toEqual(WHITE);
});

describe("specks", () => {
  const SPECKS = { does: "specks", largest: 4 } as const;
  const scene = () => {
    const picture = sheet(200, 120);
    box(picture, 20, 60, 180, 62);
    return picture;
  };

  test("alone on the paper are removed, soft edge and all", () => {
    const picture = scene();
    box(picture, 99, 19, 104, 24, [190, 190, 190]);
    box(picture, 100, 20, 103, 23);
    const result = run(picture, SPECKS);
    for (let y = 18; y < 26; y++) {
      for (let x = 98; x < 106; x++) expect(colourAt(result, x, y)).toEqual(WHITE);
    }
    expect(colourAt(result, 100, 61)).toEqual(BLACK);
  });

  test("larger than asked for stay", () => {
    const picture = scene();
    box(picture, 100, 20, 104, 23);
    expect(colourAt(run(picture, SPECKS), 102, 22)).toEqual(BLACK);
  });

  test("with a letter beside them stay: a decimal point is no dust", () => {
    const picture = scene();
    box(picture, 100, 20, 102, 31);
    box(picture, 106, 29, 108, 31);
    box(picture, 112, 20, 118, 31);
    expect(colourAt(run(picture, SPECKS), 107, 30)).toEqual(BLACK);
  });

  test("in a crowd are specks each: dust is no company for dust", () => {
    const picture = scene();
    for (let x = 40; x < 160; x += 6) box(picture, x, 20, x + 2, 22);
    const result = run(picture, SPECKS);
    for (let x = 40; x < 160; x += 6) expect(colourAt(result, x + 1, 21)).toEqual(WHITE);
  });
});

describe("print of the other side", () => {
  const BLEED = USUAL_STEPS["bleed-through"];
  const FAINT = [195, 195, 195] as const;
  const scene = () => {
    const picture = sheet(200, 120);
    box(picture, 20, 60, 180, 62);
    box(picture, 30, 80, 34, 110);
    return picture;
  };

  test("is removed, and ink of this side stays", () => {
    const picture = scene();
    box(picture, 60, 20, 140, 23, FAINT);
    box(picture, 100, 75, 104, 115, FAINT);
    const result = run(picture, BLEED);
    expect(colourAt(result, 100, 21)).toEqual(WHITE);
    expect(colourAt(result, 102, 90)).toEqual(WHITE);
    expect(colourAt(result, 100, 61)).toEqual(BLACK);
    expect(colourAt(result, 32, 90)).toEqual(BLACK);
  });

  test("is removed even where there is much more of it than of ink", () => {
    const picture = scene();
    for (let y = 4; y < 56; y += 4) box(picture, 2, y, 197, y + 2, [150, 150, 150]);
    const result = run(picture, BLEED);
    expect(colourAt(result, 100, 5)).toEqual(WHITE);
    expect(colourAt(result, 100, 61)).toEqual(BLACK);
  });

  test("stays where it touches sure ink: a half lost stretch of a line is no bleed-through", () => {
    const picture = scene();
    box(picture, 100, 60, 140, 62, FAINT);
    expect(colourAt(run(picture, BLEED), 120, 61)).toEqual(FAINT);
  });

  test("is grey: a yellow wire, as bright, stays", () => {
    const picture = scene();
    box(picture, 60, 20, 140, 23, [250, 220, 40]);
    expect(colourAt(run(picture, BLEED), 100, 21)).toEqual([250, 220, 40]);
  });

  test("is not taken for the whole of a page that is faint all over", () => {
    const picture = sheet(200, 120);
    box(picture, 20, 60, 180, 62, FAINT);
    box(picture, 30, 80, 34, 110, FAINT);
    expect(run(picture, BLEED).data).toEqual(run(picture, USUAL_STEPS.flatten).data);
  });
});
