import { addTo } from "../base/index.ts";
import type { Arrangement, Place } from "./arrangement.ts";

export type Corner = "top-left" | "top-right" | "bottom-left" | "bottom-right";

/** The way in which marks run over a face, as seen from the side it is drawn from. */
export interface MarkOrder {
  /** For rows: along each row, down each column, or along rows to and fro. */
  readonly run: "across" | "down" | "serpentine";
  readonly start: Corner;
  /** For rings. */
  readonly turn: "clockwise" | "anticlockwise";
  /** For rings: whether the outermost ring is marked first; a middle cavity is innermost. */
  readonly rings: "outer-first" | "inner-first";
}

export const USUAL_ORDER: MarkOrder = {
  run: "across",
  start: "top-left",
  turn: "clockwise",
  rings: "outer-first",
};

/** Millimetres within which two places are taken to stand in one column. */
const SAME_COLUMN = 0.01;

/** The places of an arrangement in the order in which marks are given out. */
export function inMarkOrder(
  arrangement: Arrangement,
  places: readonly Place[],
  order: MarkOrder,
): readonly Place[] {
  switch (arrangement.kind) {
    case "grid":
    case "staggered":
      return order.run === "down" ? byColumn(places, order) : byRow(places, order);
    case "rings":
      return byRing(places, order);
    case "relay":
    case "free":
      return places;
  }
}

const fromRight = (corner: Corner) => corner === "top-right" || corner === "bottom-right";
const fromBottom = (corner: Corner) => corner === "bottom-left" || corner === "bottom-right";

const grouped = (places: readonly Place[], keyOf: (place: Place) => number) => {
  const groups = new Map<number, Place[]>();
  for (const place of places) addTo(groups, keyOf(place), place);
  return [...groups].sort(([a], [b]) => a - b).map(([, group]) => group);
};

function byRow(places: readonly Place[], order: MarkOrder): Place[] {
  const rows = grouped(places, (place) => place.row).map((row) =>
    row.toSorted((a, b) => a.at[0] - b.at[0]),
  );
  if (fromBottom(order.start)) rows.reverse();
  return rows.flatMap((row, index) => {
    const back = order.run === "serpentine" && index % 2 === 1;
    return fromRight(order.start) !== back ? row.toReversed() : row;
  });
}

/** Places of staggered rows stand in columns of their own, so marks zigzag from row to row. */
function byColumn(places: readonly Place[], order: MarkOrder): Place[] {
  const columns = grouped(places, (place) => Math.round(place.at[0] / SAME_COLUMN)).map((column) =>
    column.toSorted((a, b) => a.at[1] - b.at[1]),
  );
  if (fromRight(order.start)) columns.reverse();
  return columns.flatMap((column) => (fromBottom(order.start) ? column.toReversed() : column));
}

/** The first cavity of a ring stays the first whichever way round the marks run. */
function byRing(places: readonly Place[], order: MarkOrder): Place[] {
  const rings = grouped(places, (place) => place.row).map(([first, ...rest]) => [
    ...(first ? [first] : []),
    ...(order.turn === "clockwise" ? rest : rest.toReversed()),
  ]);
  if (order.rings === "inner-first") rings.reverse();
  return rings.flat();
}
