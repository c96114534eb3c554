import { describe, expect, test } from "vitest";
import { Thickets } from "../../../src/scan/symbols/thickets.ts";
import { found, page, ring, SURE, wire } from "../../support/drawn-symbols/small-page.ts";

/** Milliseconds that they may take beside other work. */
const PATIENCE = 60_000;
/** More poses than are tried anywhere on a diagram. */
const MANY = 1000;
/** Poses that are moved about on a sheet of 17 megapixels. */
const FULL_SHEET = 2500;

describe("where much line lies close together", () => {
  test("nothing more is tried, and elsewhere it goes on", () => {
    const thickets = new Thickets(2);
    for (let n = 0; n < 400; n++) thickets.add({ x: 10, y: 10 });
    expect(thickets.isThick({ x: 12, y: 8 })).toBe(false);
    for (let n = 0; n < MANY; n++) thickets.add({ x: 10, y: 10 });
    expect(thickets.isThick({ x: 12, y: 8 })).toBe(true);
    expect(thickets.isThick({ x: 300, y: 10 })).toBe(false);
  });

  test("a page that is so all over is refused with what to do", () => {
    const thickets = new Thickets(2);
    const all = () => {
      for (let square = 0; square < 100; square++)
        for (let n = 0; n < MANY; n++) thickets.add({ x: 64 * square + 1, y: 1 });
    };
    expect(all).toThrow("Crop it to the diagram");
  });

  test("a page with a great many strokes, none of them close together, is refused as well", () => {
    const thickets = new Thickets(2);
    const everywhere = (squares: number) => {
      for (let square = 0; square < squares; square++)
        for (let n = 0; n < 400; n++) thickets.add({ x: 64 * square + 1, y: 1 });
    };
    everywhere(200);
    expect(() => everywhere(200)).toThrow("There are too many lines or symbols");
  });

  test("a page on which far more is moved about than on a full sheet is refused, and that is not", () => {
    const thickets = new Thickets(2);
    const move = (poses: number) => {
      for (let n = 0; n < poses; n++) thickets.addMoved();
    };
    move(4 * FULL_SHEET);
    expect(() => move(4 * FULL_SHEET)).toThrow("There are too many lines or symbols");
  });

  test(
    "rings within rings hold nothing sure, and the fuse beside them stays so",
    () => {
      const sheet = page((pen) => {
        for (let r = 12; r <= 72; r += 12) ring(pen, 180, 250, r);
        wire(pen, [340, 250], [740, 250], [740, 420], [400, 420]);
        pen.strokeRect(460, 226, 120, 48);
      });
      const sure = found(sheet).filter(({ confidence }) => confidence >= SURE);
      expect(sure).toMatchObject([{ kind: "fuse" }]);
    },
    PATIENCE,
  );
});
