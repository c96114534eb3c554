import { boundsOf, type Point } from "../base/index.ts";
import type { Cavity } from "../job/index.ts";

/** Distance between the middles of neighbours, millimetres: along a row, and from row to row. */
export type Pitch = readonly [along: number, between: number];

export interface Ring {
  readonly count: number;
  /** Millimetres from the middle of the face to the middle of a cavity. */
  readonly radius: number;
  /** Where its first cavity lies: degrees clockwise from the top. */
  readonly from: number;
}

/** How the cavities of a face lie, as seen from the side it is drawn from. */
export type Arrangement =
  | {
      readonly kind: "grid";
      readonly rows: number;
      readonly columns: number;
      readonly pitch: Pitch;
    }
  /** Every second row is moved half a pitch; where `nested` it also has one cavity fewer. */
  | {
      readonly kind: "staggered";
      readonly rows: number;
      readonly columns: number;
      readonly pitch: Pitch;
      /** Which way the second row is moved. */
      readonly shift: "left" | "right";
      readonly nested: boolean;
    }
  /** Rings from the outermost inwards. */
  | { readonly kind: "rings"; readonly rings: readonly Ring[]; readonly centre: boolean }
  /** The five blade openings of a mini-relay socket; the two layouts have 30 and 86 exchanged. */
  | { readonly kind: "relay"; readonly layout: "30-below" | "86-below" }
  /** Points the user chose one by one, in the order of their marks. */
  | { readonly kind: "free"; readonly points: readonly Point[] };

/** Where one cavity lies, and which row or ring of the arrangement it belongs to, from 0. */
export interface Place {
  readonly at: Point;
  readonly row: number;
  readonly opening?: Cavity["opening"];
}

/** Marks of the five openings in the order in which the places of a relay come. */
export const RELAY_MARKS = ["30", "85", "86", "87", "87a"] as const;

/**
 * The cross of blades that mini relays share: one above, one below, one at each side and one in
 * the middle. Distances are FROM MEMORY and only have to look right.
 */
const RELAY_PLACES = {
  above: { at: [0, -8.4], row: 0, opening: "blade-across" },
  middle: { at: [0, 0], row: 0, opening: "blade-across" },
  below: { at: [0, 8.4], row: 0, opening: "blade-across" },
  left: { at: [-8.4, 0], row: 0, opening: "blade-upright" },
  right: { at: [8.4, 0], row: 0, opening: "blade-upright" },
} as const satisfies Record<string, Place>;

/**
 * Rings, outermost first, just wide enough that no two cavities are closer than `pitch`
 * millimetres: those of one ring to one another, one ring to the next, and the middle to all.
 */
export function ringsByPitch(
  counts: readonly number[],
  pitch: number,
  centre: boolean,
  from: number,
): Ring[] {
  const rings: Ring[] = [];
  let within = centre ? 0 : null;
  for (const count of counts.toReversed()) {
    const alone = count > 1 ? pitch / (2 * Math.sin(Math.PI / count)) : 0;
    const radius: number = within === null ? alone : Math.max(alone, within + pitch);
    rings.unshift({ count, radius, from });
    within = radius;
  }
  return rings;
}

/** Every place of an arrangement, row by row or ring by ring, the middle of the whole at [0, 0]. */
export function placesOf(arrangement: Arrangement): readonly Place[] {
  switch (arrangement.kind) {
    case "grid":
      return centred(rowsOf(arrangement.rows, () => arrangement.columns, arrangement.pitch));
    case "staggered":
      return centred(staggeredPlaces(arrangement));
    case "rings":
      return ringPlaces(arrangement.rings, arrangement.centre);
    case "relay":
      return relayPlaces(arrangement.layout);
    case "free":
      return arrangement.points.map((at) => ({ at, row: 0 }));
  }
}

function rowsOf(
  rows: number,
  columnsIn: (row: number) => number,
  [along, between]: Pitch,
  startOf: (row: number) => number = () => 0,
): Place[] {
  const places: Place[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columnsIn(row); column++) {
      places.push({ at: [startOf(row) + column * along, row * between], row });
    }
  }
  return places;
}

function staggeredPlaces(arrangement: Extract<Arrangement, { kind: "staggered" }>): Place[] {
  const { rows, columns, pitch, nested } = arrangement;
  const half = (arrangement.shift === "right" || nested ? 1 : -1) * (pitch[0] / 2);
  const isMoved = (row: number) => row % 2 === 1;
  return rowsOf(
    rows,
    (row) => (isMoved(row) && nested ? Math.max(0, columns - 1) : columns),
    pitch,
    (row) => (isMoved(row) ? half : 0),
  );
}

function ringPlaces(rings: readonly Ring[], centre: boolean): Place[] {
  const places = rings.flatMap((ring, row) =>
    Array.from({ length: ring.count }, (_, step): Place => {
      const angle = ((ring.from + (step * 360) / ring.count) * Math.PI) / 180;
      return { at: [ring.radius * Math.sin(angle), -ring.radius * Math.cos(angle)], row };
    }),
  );
  return centre ? [...places, { at: [0, 0], row: rings.length }] : places;
}

function relayPlaces(layout: "30-below" | "86-below"): Place[] {
  const { above, middle, below, left, right } = RELAY_PLACES;
  return layout === "30-below"
    ? [below, right, left, above, middle]
    : [left, right, below, above, middle];
}

function centred(places: readonly Place[]): Place[] {
  const box = boundsOf(places.map((place) => place.at));
  if (!box) return [];
  const x = (box.left + box.right) / 2;
  const y = (box.top + box.bottom) / 2;
  return places.map((place) => ({ ...place, at: [place.at[0] - x, place.at[1] - y] }));
}
