import fc from "fast-check";
import { expect, test } from "vitest";
import type { Plug } from "../../src/job/index.ts";
import {
  cavityAt,
  cavityBeyond,
  edgeOf,
  faceOf,
  keyOn,
  mirrorAxis,
  mirrorPoint,
  otherHalfOf,
  otherSide,
  outlineAround,
  USUAL_ORDER,
  viewFrom,
} from "../../src/plug/index.ts";

const eightWay: Plug = {
  id: "X1",
  side: "mating",
  ...faceOf({
    arrangement: { kind: "grid", rows: 2, columns: 4, pitch: [5, 5] },
    marks: { style: "numbers", first: 1 },
    order: USUAL_ORDER,
    housing: "rectangle",
    latch: "top",
    key: "left",
  }),
};

const row = (plug: Plug, side: Plug["side"], top: boolean) =>
  viewFrom(plug, side)
    .cavities.filter((cavity) => cavity.at[1] < 0 === top)
    .toSorted((a, b) => a.at[0] - b.at[0])
    .map((cavity) => cavity.mark)
    .join(" ");

test("the wire side shows the rows of the mating side the other way round", () => {
  expect(row(eightWay, "mating", true)).toBe("1 2 3 4");
  expect(row(eightWay, "wire", true)).toBe("4 3 2 1");
  expect(row(eightWay, "wire", false)).toBe("8 7 6 5");
});

test("the key changes sides with the face, the latch stays on top", () => {
  const view = viewFrom(eightWay, "wire");
  const edges = view.keys.map((key) => view.outline && edgeOf(view.outline, key));
  expect(edges).toEqual(["top", "right"]);
  expect(view.keys.map((key) => key.turn)).toEqual([0, 90]);
});

test("looking from a side never moves a stored point", () => {
  const before = structuredClone(eightWay);
  viewFrom(eightWay, "wire");
  viewFrom(eightWay, "mating");
  expect(eightWay).toEqual(before);
});

test("a photo behind the face is turned over with it", () => {
  const photo = {
    file: "a.png",
    width: 300,
    height: 200,
    at: [-8, -6] as [number, number],
    mmPerPixel: 0.1,
  };
  const plug: Plug = { ...eightWay, photo };
  expect(viewFrom(plug, "mating").photo).toEqual({
    file: "a.png",
    at: [-8, -6],
    width: 30,
    height: 20,
  });
  expect(viewFrom(plug, "wire").photo?.at).toEqual([-22, -6]);
  expect(viewFrom(plug, "wire").bounds.left).toBe(-22);
});

const coordinate = fc.integer({ min: -4000, max: 4000 }).map((hundredths) => hundredths / 100);
const point = fc.tuple(coordinate, coordinate);
const plugs: fc.Arbitrary<Plug> = fc
  .tuple(
    fc.uniqueArray(point, { minLength: 1, maxLength: 30, selector: (at) => at.join() }),
    fc.constantFrom("mating", "wire"),
    fc.constantFrom("rectangle", "circle", "polygon", "none"),
    fc.constantFrom("top", "right", "bottom", "left"),
  )
  .map(([points, side, shape, edge]) => {
    const cavities = points.map((at, index): Plug["cavities"][number] => ({
      mark: String(index + 1),
      at,
    }));
    const housing = outlineAround(cavities, shape === "circle" ? "circle" : "rectangle");
    const outline: Plug["outline"] =
      shape === "none"
        ? undefined
        : shape === "polygon"
          ? {
              shape,
              points: [
                [-50, -50],
                [60, -50],
                [10, 70],
              ],
            }
          : housing;
    return { id: "X1", side, cavities, outline, keys: [keyOn(housing, "latch", edge)] };
  });

test("turning over twice is the same as not at all", () => {
  fc.assert(
    fc.property(plugs, point, (plug, at) => {
      const over = mirrorPoint(plug, otherSide(plug.side));
      const [x, y] = over(over(at));
      expect(x).toBeCloseTo(at[0], 9);
      expect(y).toBe(at[1]);

      const seen = viewFrom(plug, otherSide(plug.side));
      const stored: Plug = {
        ...plug,
        cavities: seen.cavities.map(({ mark, at: [left, top] }) => ({ mark, at: [left, top] })),
        outline: seen.outline ?? undefined,
        keys: [...seen.keys],
      };
      const again = viewFrom(stored, otherSide(plug.side));
      const straight = viewFrom(plug, plug.side);
      for (const [index, cavity] of again.cavities.entries()) {
        expect(cavity.at[0]).toBeCloseTo(straight.cavities[index]?.at[0] ?? Number.NaN, 9);
        expect(cavity.at[1]).toBe(straight.cavities[index]?.at[1]);
      }
      expect(again.keys[0]?.turn).toBe(straight.keys[0]?.turn);
    }),
  );
});

test("both sides fill the same box and keep every distance", () => {
  fc.assert(
    fc.property(plugs, (plug) => {
      const one = viewFrom(plug, "mating");
      const other = viewFrom(plug, "wire");
      expect(other.bounds.top).toBeCloseTo(one.bounds.top, 9);
      expect(other.bounds.right - other.bounds.left).toBeCloseTo(
        one.bounds.right - one.bounds.left,
        9,
      );
      const apart = (view: typeof one) =>
        view.cavities.map(({ at }) =>
          Math.hypot(
            at[0] - (view.cavities[0]?.at[0] ?? 0),
            at[1] - (view.cavities[0]?.at[1] ?? 0),
          ),
        );
      const distances = apart(other);
      for (const [index, length] of apart(one).entries()) {
        expect(distances[index]).toBeCloseTo(length, 9);
      }
    }),
  );
});

test("a touch finds the nearest cavity within reach, and none beyond", () => {
  const view = viewFrom(eightWay, "wire");
  expect(cavityAt(view, [7.5, -2.5], 2)?.mark).toBe("1");
  expect(cavityAt(view, [6.4, -2.2], 2)?.mark).toBe("1");
  expect(cavityAt(view, [30, 30], 2)).toBeNull();
  fc.assert(
    fc.property(plugs, point, (plug, at) => {
      const seen = viewFrom(plug, "mating");
      const found = cavityAt(seen, at, Number.POSITIVE_INFINITY);
      const apart = seen.cavities.map((one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]));
      expect(found && apart[found.index]).toBeCloseTo(Math.min(...apart), 9);
    }),
  );
});

test("arrow keys walk the face as it is seen", () => {
  const walk = (side: Plug["side"], mark: string, direction: "left" | "right" | "up" | "down") => {
    const view = viewFrom(eightWay, side);
    const from = view.cavities.find((cavity) => cavity.mark === mark);
    return from ? cavityBeyond(view, from, direction)?.mark : "no such mark";
  };
  expect(walk("mating", "1", "right")).toBe("2");
  expect(walk("mating", "1", "left")).toBeUndefined();
  expect(walk("mating", "2", "down")).toBe("6");
  expect(walk("wire", "2", "right")).toBe("1");
  expect(walk("wire", "7", "up")).toBe("3");
});

test("the other half meets this one mark on mark: laid face to face, every cavity coincides", () => {
  const plug: Plug = {
    id: "X1",
    side: "mating",
    cavities: [
      { mark: "1", at: [0, 0] },
      { mark: "2", at: [5, 0] },
      { mark: "3", at: [5, 7] },
    ],
  };
  for (const side of ["mating", "wire"] as const) {
    const drawn = { ...plug, side };
    const axis = mirrorAxis(drawn);
    const own = viewFrom(drawn, "mating");
    // The other half is turned over to be plugged in: left and right change places.
    const met = otherHalfOf(drawn).cavities.map(({ mark, at }) => [mark, 2 * axis - at[0], at[1]]);
    expect(met).toEqual(own.cavities.map(({ mark, at }) => [mark, at[0], at[1]]));
  }
});
