import { expect, test } from "vitest";
import { distance } from "../../src/base/index.ts";
import { FACE_LIBRARY, faceOf, spacingOf } from "../../src/plug/index.ts";
import { TRAILER_PLUGS } from "../../src/standards/index.ts";

test("every face of the library can be drawn, with marks and places of its own", () => {
  expect(new Set(FACE_LIBRARY.map((face) => face.id)).size).toBe(FACE_LIBRARY.length);
  for (const { id, plan } of FACE_LIBRARY) {
    const { cavities } = faceOf(plan);
    expect(cavities.length, id).toBeGreaterThan(0);
    expect(new Set(cavities.map((cavity) => cavity.mark)).size, id).toBe(cavities.length);
    if (cavities.length > 1) expect(spacingOf(cavities), id).toBeGreaterThan(4.9);
  }
});

test("a published plug carries its table's marks in the table's order", () => {
  const published = FACE_LIBRARY.filter((face) => face.published);
  expect(published).toHaveLength(TRAILER_PLUGS.length);
  for (const { plan, published: table } of published) {
    expect(faceOf(plan).cavities.map((cavity) => cavity.mark)).toEqual(
      table?.pins.map((pin) => pin.mark),
    );
    // Where the key sits is not published in the table, and is not made up.
    expect(faceOf(plan).keys).toEqual([]);
  }
});

test("the two relay layouts differ in nothing but 30 and 86", () => {
  const [a, b] = FACE_LIBRARY.filter((face) => face.group === "Relay sockets").map(
    (face) => new Map(faceOf(face.plan).cavities.map(({ mark, at }) => [mark, at])),
  );
  if (!a || !b) throw new Error("two layouts");
  for (const mark of ["85", "87", "87a"]) expect(a.get(mark)).toEqual(b.get(mark));
  expect(distance(a.get("30") ?? [0, 0], b.get("86") ?? [9, 9])).toBe(0);
  expect(distance(a.get("86") ?? [0, 0], b.get("30") ?? [9, 9])).toBe(0);
});
