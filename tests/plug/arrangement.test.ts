import fc from "fast-check";
import { expect, test } from "vitest";
import { distance } from "../../src/base/index.ts";
import {
  type Arrangement,
  cavitiesOf,
  faceOf,
  placesOf,
  RELAY_MARKS,
  ringsByPitch,
  spacingOf,
  USUAL_ORDER,
} from "../../src/plug/index.ts";

const numbered = { style: "numbers", first: 1 } as const;
const marksAndPlaces = (arrangement: Arrangement, order = USUAL_ORDER) =>
  cavitiesOf({ arrangement, marks: numbered, order }).map(({ mark, at }) => [mark, ...at]);

const grid = (rows: number, columns: number): Arrangement => ({
  kind: "grid",
  rows,
  columns,
  pitch: [5, 4],
});

test("two rows of three across from the top left", () => {
  expect(marksAndPlaces(grid(2, 3))).toEqual([
    ["1", -5, -2],
    ["2", 0, -2],
    ["3", 5, -2],
    ["4", -5, 2],
    ["5", 0, 2],
    ["6", 5, 2],
  ]);
});

test("two rows of three down from the top right", () => {
  const order = { ...USUAL_ORDER, run: "down", start: "top-right" } as const;
  expect(marksAndPlaces(grid(2, 3), order)).toEqual([
    ["1", 5, -2],
    ["2", 5, 2],
    ["3", 0, -2],
    ["4", 0, 2],
    ["5", -5, -2],
    ["6", -5, 2],
  ]);
});

test("three rows to and fro from the bottom left", () => {
  const order = { ...USUAL_ORDER, run: "serpentine", start: "bottom-left" } as const;
  expect(marksAndPlaces(grid(3, 2), order)).toEqual([
    ["1", -2.5, 4],
    ["2", 2.5, 4],
    ["3", 2.5, 0],
    ["4", -2.5, 0],
    ["5", -2.5, -4],
    ["6", 2.5, -4],
  ]);
});

test("staggered rows stand half a pitch apart, nested ones with one cavity fewer", () => {
  const staggered: Arrangement = {
    kind: "staggered",
    rows: 3,
    columns: 4,
    pitch: [4, 3],
    shift: "right",
    nested: true,
  };
  const rows = [0, 1, 2].map((row) =>
    placesOf(staggered)
      .filter((place) => place.row === row)
      .map((place) => place.at),
  );
  expect(rows).toEqual([
    [
      [-6, -3],
      [-2, -3],
      [2, -3],
      [6, -3],
    ],
    [
      [-4, 0],
      [0, 0],
      [4, 0],
    ],
    [
      [-6, 3],
      [-2, 3],
      [2, 3],
      [6, 3],
    ],
  ]);
});

test("staggered rows marked down zigzag from row to row", () => {
  const arrangement: Arrangement = {
    kind: "staggered",
    rows: 2,
    columns: 3,
    pitch: [4, 4],
    shift: "right",
    nested: false,
  };
  expect(marksAndPlaces(arrangement, { ...USUAL_ORDER, run: "down" })).toEqual([
    ["1", -5, -2],
    ["2", -3, 2],
    ["3", -1, -2],
    ["4", 1, 2],
    ["5", 3, -2],
    ["6", 5, 2],
  ]);
});

test("a ring runs clockwise from its first cavity and ends in the middle", () => {
  const arrangement: Arrangement = {
    kind: "rings",
    rings: [{ count: 4, radius: 10, from: 0 }],
    centre: true,
  };
  expect(marksAndPlaces(arrangement)).toEqual([
    ["1", 0, -10],
    ["2", 10, 0],
    ["3", 0, 10],
    ["4", -10, 0],
    ["5", 0, 0],
  ]);
  const other = { ...USUAL_ORDER, turn: "anticlockwise", rings: "inner-first" } as const;
  expect(marksAndPlaces(arrangement, other)).toEqual([
    ["1", 0, 0],
    ["2", 0, -10],
    ["3", -10, 0],
    ["4", 0, 10],
    ["5", 10, 0],
  ]);
});

test("the two relay layouts differ by 30 and 86 exchanged and by nothing else", () => {
  const at = (layout: "30-below" | "86-below") =>
    Object.fromEntries(
      cavitiesOf({
        arrangement: { kind: "relay", layout },
        marks: { style: "typed", marks: [...RELAY_MARKS] },
        order: USUAL_ORDER,
      }).map((cavity) => [cavity.mark, cavity.at]),
    );
  const one = at("30-below");
  const other = at("86-below");
  expect(Object.keys(one)).toEqual(["30", "85", "86", "87", "87a"]);
  expect(other).toEqual({ ...one, 30: one[86], 86: one[30] });
});

test("free points keep their order and places", () => {
  const arrangement: Arrangement = {
    kind: "free",
    points: [
      [9, 1],
      [2, 3],
    ],
  };
  expect(marksAndPlaces(arrangement)).toEqual([
    ["1", 9, 1],
    ["2", 2, 3],
  ]);
});

const count = (max: number) => fc.integer({ min: 1, max });
const mm = fc.integer({ min: 10, max: 200 }).map((tenths) => tenths / 10);
const rows = fc.record({ rows: count(12), columns: count(12), pitch: fc.tuple(mm, mm) });
const arrangements: fc.Arbitrary<Arrangement> = fc.oneof(
  rows.map((shape) => ({ kind: "grid", ...shape }) as const),
  fc
    .tuple(rows, fc.constantFrom("left", "right"), fc.boolean())
    .map(([shape, shift, nested]) => ({ kind: "staggered", ...shape, shift, nested }) as const),
  fc
    .tuple(fc.array(count(16), { minLength: 1, maxLength: 4 }), fc.boolean(), fc.nat(359))
    .map(([counts, centre, from]) => {
      const rings = counts.map((each, ring) => ({
        count: each,
        radius: 8 * (counts.length - ring),
        from,
      }));
      return { kind: "rings", rings, centre } as const;
    }),
);
const orders = fc.record({
  run: fc.constantFrom("across", "down", "serpentine"),
  start: fc.constantFrom("top-left", "top-right", "bottom-left", "bottom-right"),
  turn: fc.constantFrom("clockwise", "anticlockwise"),
  rings: fc.constantFrom("outer-first", "inner-first"),
} as const);

test("whatever the order, every place is marked once and only marks move", () => {
  fc.assert(
    fc.property(arrangements, orders, (arrangement, order) => {
      const cavities = cavitiesOf({ arrangement, marks: numbered, order });
      const key = ({ at }: { at: readonly [number, number] }) => at.join();
      const usual = cavitiesOf({ arrangement, marks: numbered, order: USUAL_ORDER });
      expect(cavities.map(key).sort()).toEqual(usual.map(key).sort());
      expect(new Set(cavities.map((cavity) => cavity.mark)).size).toBe(cavities.length);
      expect(new Set(cavities.map(key)).size).toBe(cavities.length);
    }),
  );
});

test("neighbours in a row stand one pitch apart and rows likewise", () => {
  fc.assert(
    fc.property(rows, ({ rows, columns, pitch }) => {
      const places = placesOf({ kind: "grid", rows, columns, pitch });
      expect(places).toHaveLength(rows * columns);
      for (const [index, place] of places.entries()) {
        const next = places[index + 1];
        if (next?.row === place.row) expect(next.at[0] - place.at[0]).toBeCloseTo(pitch[0], 9);
        const below = places[index + columns];
        if (below) expect(below.at[1] - place.at[1]).toBeCloseTo(pitch[1], 9);
      }
    }),
  );
});

test("cavities of a ring stand at its radius, evenly", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 24 }), fc.nat(359), (many, from) => {
      const places = placesOf({
        kind: "rings",
        rings: [{ count: many, radius: 10, from }],
        centre: false,
      });
      const chord = 20 * Math.sin(Math.PI / many);
      for (const [index, place] of places.entries()) {
        expect(Math.hypot(...place.at)).toBeCloseTo(10, 9);
        const next = places[(index + 1) % many];
        if (next) expect(distance(place.at, next.at)).toBeCloseTo(chord, 9);
      }
    }),
  );
});

test("rings by pitch are no closer than the pitch anywhere, and touch it somewhere", () => {
  const counts = fc.array(count(16), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(counts, mm, fc.boolean(), fc.nat(359), (list, pitch, centre, from) => {
      fc.pre(centre || list.length > 1 || (list[0] ?? 0) > 1);
      const rings = ringsByPitch(list, pitch, centre, from);
      expect(rings.map((ring) => ring.count)).toEqual(list);
      const places = placesOf({ kind: "rings", rings, centre });
      expect(spacingOf(places)).toBeGreaterThan(pitch - 1e-9);
      const [first, second] = list;
      if (list.length === 1 && !centre && first && second === undefined) {
        expect(spacingOf(places)).toBeCloseTo(pitch, 9);
      }
    }),
  );
});

test("the spacing is the least distance of any two cavities", () => {
  const points = fc.array(fc.tuple(fc.nat(60), fc.nat(60)), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(points, (list) => {
      const apart = list.flatMap((a, i) => list.slice(i + 1).map((b) => distance(a, b)));
      const least = Math.min(...apart.filter((length) => length > 0));
      const spacing = spacingOf(list.map((at) => ({ at })));
      expect(spacing).toBe(Number.isFinite(least) ? least : 6);
    }),
  );
});

test("the housing holds every cavity, the latch stands outside it and the key inside", () => {
  fc.assert(
    fc.property(
      arrangements,
      fc.constantFrom("rectangle", "circle"),
      fc.constantFrom("top", "right", "bottom", "left"),
      (arrangement, housing, edge) => {
        const face = faceOf({
          arrangement,
          marks: numbered,
          order: USUAL_ORDER,
          housing,
          latch: edge,
          key: edge,
        });
        const outline = face.outline;
        const inside = ([x, y]: readonly [number, number]) => {
          if (outline.shape === "circle") {
            return distance([x, y], outline.at) < outline.radius;
          }
          if (outline.shape !== "rectangle") throw new Error("no polygon was asked for");
          const [left, top] = outline.at;
          return x > left && x < left + outline.width && y > top && y < top + outline.height;
        };
        for (const cavity of face.cavities) expect(inside(cavity.at)).toBe(true);
        const [latch, key] = face.keys;
        expect(latch && inside(latch.at)).toBe(false);
        expect(key && inside(key.at)).toBe(true);
      },
    ),
  );
});
