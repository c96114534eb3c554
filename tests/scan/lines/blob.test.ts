import type { SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { hasDarkDisc, isSolid } from "../../../src/scan/lines/blob.ts";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { solidInk } from "../../../src/scan/lines/solid-ink.ts";
import { type Zone, zonesOf } from "../../../src/scan/lines/zones.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { across, dot, down, MIDDLE, SIZE } from "../../support/drawn-pages/small-sheet.ts";
import { drawnPage, LINE } from "../../support/pen-and-paper.ts";

/** A sheet, and the place on it where most lines meet. */
function placeOf(draw: (pen: SKRSContext2D) => void) {
  const page = drawnPage(SIZE, draw);
  const skeleton = finished(skeletonOf(page.thinned));
  const zones = finished(zonesOf(page, skeleton, new Set()));
  const ink = finished(solidInk(page, skeleton, zones));
  const zone = zones.sort((a, b) => b.branches.length - a.branches.length)[0] as Zone;
  return { ink, page, zone };
}

const crossing = (pen: SKRSContext2D) => {
  across(pen);
  down(pen);
};

/** Ink of that colour in the four corners of a crossing, beside it as a word is. */
const smear = (pen: SKRSContext2D, colour: string) => {
  pen.fillStyle = colour;
  pen.fillRect(MIDDLE - 3 * LINE, MIDDLE - 3 * LINE, 6 * LINE, 6 * LINE);
};

describe("a blob where lines meet", () => {
  test("of a dot is solid and dark, be it in a word's pale ink", () => {
    const dotted = placeOf((pen) => {
      smear(pen, "#999");
      pen.fillStyle = "black";
      crossing(pen);
      dot(pen, 3);
    });
    expect(hasDarkDisc(dotted.ink, dotted.zone)).toBe(true);
    const plain = placeOf((pen) => {
      crossing(pen);
      dot(pen, 3);
    });
    expect(isSolid(plain.page, plain.zone)).toBe(true);
    expect(hasDarkDisc(plain.ink, plain.zone)).toBe(true);
  });

  test("of pale ink over a crossing is neither", () => {
    const { ink, page, zone } = placeOf((pen) => {
      smear(pen, "#999");
      crossing(pen);
    });
    expect(zone.blob).toBeGreaterThan(1.4 * LINE);
    expect(isSolid(page, zone)).toBe(false);
    expect(hasDarkDisc(ink, zone)).toBe(false);
  });

  test("of a plain crossing, which is black, is none", () => {
    const { ink, zone } = placeOf(crossing);
    expect(hasDarkDisc(ink, zone)).toBe(false);
  });
});
