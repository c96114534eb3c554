import { describe, expect, test } from "vitest";
import { distance } from "../../../src/base/index.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { findParts } from "../../../src/scan/symbols/find-parts.ts";
import { mostByTone } from "../../../src/scan/symbols/tone.ts";
import type { Pen } from "../../support/drawn-symbols/page.ts";
import { found, page, SURE, wire } from "../../support/drawn-symbols/small-page.ts";

/** Milliseconds that they may take beside other work. */
const PATIENCE = 60_000;

const dot = (pen: Pen, x: number, y: number, radius = 9) => {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.fill();
};

const partsOf = (draw: (pen: Pen) => void) =>
  finished(findParts(finished(preparePage(page(draw))), { examples: [] }));

describe("what a cup leaves", () => {
  /** Two wires, joined with a dot, and a ring across them in the ink said; nothing where it is null. */
  const sheet = (ring: string | null) => (pen: Pen) => {
    wire(pen, [40, 250], [760, 250]);
    wire(pen, [200, 250], [200, 460]);
    dot(pen, 200, 250);
    if (ring === null) return;
    pen.globalCompositeOperation = "multiply";
    pen.strokeStyle = ring;
    pen.lineWidth = 6;
    pen.beginPath();
    pen.ellipse(540, 250, 120, 90, 0, 0, 2 * Math.PI);
    pen.stroke();
    // Flecks where it runs over the wire.
    pen.fillStyle = "#202020";
    dot(pen, 420, 250, 8);
    dot(pen, 660, 250, 8);
  };
  const joints = (ring: string | null) =>
    partsOf(sheet(ring)).filter(({ kind }) => kind === "splice");
  const sure = (ring: string | null) => joints(ring).filter(({ confidence }) => confidence >= SURE);

  test(
    "gives no sure joint where it crosses a wire; the wires' own stays sure",
    () => {
      const [own, ...others] = sure("#a08060");
      expect(others).toEqual([]);
      expect(distance(own?.at ?? [0, 0], [200, 250])).toBeLessThan(3);
    },
    PATIENCE,
  );

  test(
    "the same ring in the ink of the wires does",
    () => {
      expect(sure("black").length).toBe(3);
    },
    PATIENCE,
  );
});

describe("a symbol on a wire", () => {
  const fuse = (ink: string) =>
    found(
      page((pen) => {
        wire(pen, [60, 100], [740, 100], [740, 400], [60, 400]);
        wire(pen, [60, 200], [640, 200], [640, 300], [60, 300]);
        pen.strokeStyle = ink;
        wire(pen, [60, 250], [540, 250]);
        pen.strokeRect(240, 226, 120, 48);
      }),
    ).filter(({ kind, at }) => kind === "fuse" && distance(at, [300, 250]) < 10);

  test(
    "is sure in the page's ink, likely in a paler one, and doubtful in one as pale as a stain",
    () => {
      const [plain, paler, stain] = ["#000000", "#585858", "#989898"].map(
        (ink) => fuse(ink)[0]?.confidence ?? 0,
      );
      expect(plain).toBeGreaterThanOrEqual(SURE);
      expect(paler).toBeLessThan(SURE);
      expect(paler).toBeGreaterThanOrEqual(0.5);
      expect(stain).toBeLessThan(0.5);
    },
    PATIENCE,
  );
});

test("the paler the ink, the less is said of it", () => {
  const said = [1.1, 0.92, 0.75, 0.6, 0.5, 0.1].map((tone) => mostByTone(tone));
  expect(said).toEqual(said.toSorted((one, other) => other - one));
  expect(said.filter((most) => most >= SURE)).toHaveLength(2);
});

test(
  "a blot far larger than a sheet's dots is no sure joint",
  () => {
    const sheet = (blot: number) =>
      partsOf((pen) => {
        for (const [n, y] of [60, 140, 220, 300, 380, 460].entries()) {
          wire(pen, [40, y], [760, y]);
          wire(pen, [150 + 90 * n, y], [150 + 90 * n, y + 30]);
          dot(pen, 150 + 90 * n, y, n === 5 ? blot : 7);
        }
      }).filter(({ kind, confidence }) => kind === "splice" && confidence >= SURE);
    expect(sheet(7)).toHaveLength(6);
    expect(sheet(14)).toHaveLength(5);
  },
  PATIENCE,
);
