import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { cornerInk } from "../../../src/scan/lines/corner-ink.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { solidInk } from "../../../src/scan/lines/solid-ink.ts";
import { waysOf } from "../../../src/scan/lines/ways.ts";
import { zonesOf } from "../../../src/scan/lines/zones.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";

const SIZE = 160;
/** Not on whole pixels: a scanner does not know where they are. */
const MIDDLE = 80.3;

/** A page with a crossing in its middle and what else a pen draws, all of it blurred. */
function measured(
  { line, blur = 0 }: { line: number; blur?: number },
  draw = (_: SKRSContext2D) => {},
) {
  const sheet = createCanvas(SIZE, SIZE);
  const pen = sheet.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, SIZE, SIZE);
  pen.fillStyle = "black";
  pen.fillRect(8, MIDDLE - line / 2, SIZE - 16, line);
  pen.fillRect(MIDDLE - line / 2, 8, line, SIZE - 16);
  draw(pen);
  const copy = createCanvas(SIZE, SIZE).getContext("2d");
  copy.filter = blur > 0 ? `blur(${blur}px)` : "none";
  copy.drawImage(sheet, 0, 0);
  const { data } = copy.getImageData(0, 0, SIZE, SIZE);
  const page = finished(preparePage(greyFrom({ width: SIZE, height: SIZE, data })));
  const skeleton = finished(skeletonOf(page.thinned));
  const zones = finished(zonesOf(page, skeleton, new Set()));
  const ink = finished(solidInk(page, skeleton, zones));
  const zone = zones.find(({ branches }) => branches.length === 4);
  if (!zone) throw new Error("no lines cross");
  const ways = waysOf(skeleton, []);
  const far = 12 * page.lineWidth;
  const along = zone.branches.map((branch) => ways.along(branch, far, zone.at, zone.radius + far));
  return { ink, corners: cornerInk(ink, zone, along) };
}

const dot = (widths: number, line: number) => (pen: SKRSContext2D) => {
  pen.beginPath();
  pen.arc(MIDDLE, MIDDLE, (widths * line) / 2, 0, 2 * Math.PI);
  pen.fill();
};

describe("ink in the corners of two lines", () => {
  test.each([{ line: 3 }, { line: 6 }, { line: 3, blur: 1 }, { line: 2, blur: 1.4 }])(
    "is hardly any where $line px wide lines cross, blurred by $blur",
    (page) => {
      expect(Math.abs(measured(page).corners ?? 9)).toBeLessThan(0.15);
    },
  );

  test.each([{ line: 3 }, { line: 6 }, { line: 3, blur: 1 }, { line: 2, blur: 1.4 }])(
    "fills them in a dot three lines wide, of lines $line px wide, blurred by $blur",
    (page) => {
      expect(measured(page, dot(3, page.line)).corners).toBeGreaterThan(0.4);
    },
  );

  test("one empty corner is a white spot in a dot", () => {
    const { corners } = measured({ line: 4 }, (pen) => {
      dot(4, 4)(pen);
      pen.fillStyle = "white";
      pen.fillRect(MIDDLE + 3, MIDDLE + 3, 4, 4);
    });
    expect(corners).toBeGreaterThan(0.8);
  });

  test("what fills the corners of one side is no dot", () => {
    const { corners } = measured({ line: 4 }, (pen) => {
      pen.beginPath();
      pen.arc(MIDDLE, MIDDLE, 9, Math.PI, 0);
      pen.fill();
    });
    expect(corners).toBeLessThan(0.2);
  });
});

describe("solid ink", () => {
  test("a blurred line is as wide as it was drawn, and not as its paler ink makes it", () => {
    const { ink } = measured({ line: 2, blur: 1.4 });
    expect(ink.page.lineWidth).toBeGreaterThan(3 * ink.page.scale);
    expect(ink.lineWidth / ink.page.scale).toBeGreaterThan(1.5);
    expect(ink.lineWidth / ink.page.scale).toBeLessThan(2.6);
  });
});
