import { type Box, distance, type Point } from "../../base/index.ts";
import type { Sliced } from "../sliced.ts";
import { type Hole, type Holes, sizeOf } from "./holes.ts";
import { isOnFrame } from "./page-frame.ts";
import { isInk, nearest, type SymbolPage } from "./symbol-page.ts";
import type { EdgePin } from "./symbol-proposal.ts";

/** A box that lines end on and words stand in. All in pixels of the symbol page. */
export interface ModuleFind {
  /** Middles of its border lines' corners: left top, right top, right bottom, left bottom. */
  readonly corners: readonly [Point, Point, Point, Point];
  readonly pins: readonly EdgePin[];
  /** Share of the border that is drawn. */
  readonly border: number;
}

/** Sides, in line widths. */
const LEAST_SIDE = 14;
/** Of the page's width and height. */
const MOST_SHARE = 0.6;
/** Share of its box that a hole fills, at least: words stand in it. */
const FILLED = 0.7;
const BORDER = 0.9;
/** A line that leaves is as long as this at least, in line widths. */
const LEAVES = 5;
/** Pins are as far from the corners, in line widths. */
const FROM_CORNER = 2.5;

/** `frame`: around the drawing, where there is one. */
export function* modulesOf(
  page: SymbolPage,
  holes: Holes,
  frame: Box | null,
): Sliced<ModuleFind[]> {
  const found: ModuleFind[] = [];
  for (const [n, hole] of holes.list.entries()) {
    const [width, height] = sizeOf(hole);
    const least = LEAST_SIDE * page.line;
    if (width < least || height < least) continue;
    if (width > MOST_SHARE * page.width || height > MOST_SHARE * page.height) continue;
    if (hole.area < FILLED * width * height) continue;
    yield n / holes.list.length;
    const corners = cornersOf(page, holes.labels, hole);
    if (!corners) continue;
    const border = borderOf(page, corners);
    if (border < BORDER || goesOnAtCorner(page, corners)) continue;
    if (wordsIn(page, hole) < 2) continue;
    const pins = pinsOf(page, corners);
    if (pins.length < 2 || isTab(pins)) continue;
    if (frame && pins.every((pin) => leadsToFrame(page, frame, pin))) continue;
    found.push({ corners, pins, border });
  }
  return found;
}

/** The outermost pixels of a hole along the diagonals, moved out to the middle of the line. */
function cornersOf(
  page: SymbolPage,
  labels: Holes["labels"],
  { left, top, right, bottom, label }: Hole,
): ModuleFind["corners"] | null {
  let [a, b, c, d]: (Point | null)[] = [null, null, null, null];
  let [most1, most2, most3, most4] = [1e9, -1e9, -1e9, 1e9];
  for (let y = top; y <= bottom; y++) {
    const row = y * page.width;
    let first = -1;
    let last = -1;
    for (let x = left; x <= right; x++) {
      if (labels[row + x] !== label) continue;
      first = x;
      break;
    }
    if (first < 0) continue;
    for (let x = right; x >= left; x--) {
      if (labels[row + x] !== label) continue;
      last = x;
      break;
    }
    if (first + y < most1) [most1, a] = [first + y, [first, y]];
    if (last - y > most2) [most2, b] = [last - y, [last, y]];
    if (last + y > most3) [most3, c] = [last + y, [last, y]];
    if (first - y < most4) [most4, d] = [first - y, [first, y]];
  }
  if (!a || !b || !c || !d) return null;
  const out = (page.line + 1) / 2;
  return [
    [a[0] - out, a[1] - out],
    [b[0] + out, b[1] - out],
    [c[0] + out, c[1] + out],
    [d[0] - out, d[1] + out],
  ];
}

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

function borderOf(page: SymbolPage, corners: ModuleFind["corners"]): number {
  let [on, all] = [0, 0];
  corners.forEach((a, n) => {
    const b = corners[(n + 1) % 4] as Point;
    const steps = Math.round(distance(a, b) / page.line);
    for (let step = 1; step < steps; step++) {
      const [x, y] = between(a, b, step / steps);
      all++;
      if (nearest(page, x, y) <= 1.1 * page.line + 1) on++;
    }
  });
  return all === 0 ? 0 : on / all;
}

/** Whether a side is drawn on beyond a corner: cells of a table are, and a frame's parts. */
function goesOnAtCorner(page: SymbolPage, corners: ModuleFind["corners"]): boolean {
  return corners.some((a, n) => {
    const b = corners[(n + 1) % 4] as Point;
    const length = distance(a, b);
    const beyond = (share: (by: number) => number) => {
      let on = 0;
      for (let by = 2.5; by <= 6; by += 0.5) {
        const [x, y] = between(a, b, share((by * page.line) / length));
        if (nearest(page, x, y) <= 0.9 * page.line) on++;
      }
      return on >= 7;
    };
    return beyond((by) => -by) || beyond((by) => 1 + by);
  });
}

/** Pieces of ink in the hole that are letters by their size. */
function wordsIn(page: SymbolPage, { left, top, right, bottom }: Hole): number {
  let count = 0;
  for (const one of page.components.list) {
    if (one.left <= left || one.right >= right || one.top <= top || one.bottom >= bottom) continue;
    const size = Math.max(one.right - one.left, one.bottom - one.top) + 1;
    if (size > 2.5 * page.line && size < 14 * page.line) count++;
  }
  return count;
}

const SIDES = ["top", "right", "bottom", "left"] as const;

/** Where lines leave the border, in reading order: by rows, then from the left. */
function pinsOf(page: SymbolPage, corners: ModuleFind["corners"]): EdgePin[] {
  const pins: EdgePin[] = [];
  corners.forEach((a, n) => {
    const b = corners[(n + 1) % 4] as Point;
    const side = SIDES[n] as (typeof SIDES)[number];
    const length = distance(a, b);
    // Clockwise, so that the way out lies to the left of each side.
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const out = (along: number, by: number): Point => [
      a[0] + ux * along + uy * by,
      a[1] + uy * along - ux * by,
    ];
    const leaves = (along: number) => {
      for (let by = 1.5; by <= LEAVES; by += 0.5) {
        const [x, y] = out(along, by * page.line);
        if (!isInk(page, x, y)) return false;
      }
      return true;
    };
    const from = FROM_CORNER * page.line;
    let began: number | null = null;
    for (let along = from; along <= length - from; along += 0.5) {
      const isOn = leaves(along);
      if (isOn && began === null) began = along;
      if (began === null || (isOn && along + 0.5 <= length - from)) continue;
      const ended = along;
      if (ended - began <= 2.5 * page.line) pins.push({ at: out((began + ended) / 2, 0), side });
      began = null;
    }
  });
  return pins;
}

/** Two lines alone that leave by one side near one another: the tab of a plug's face. */
function isTab(pins: readonly EdgePin[]): boolean {
  return pins.length === 2 && pins[0]?.side === pins[1]?.side;
}

/** Ways out of a box's sides. */
const WAYS: Readonly<Record<EdgePin["side"], Point>> = {
  left: [-1, 0],
  top: [0, -1],
  right: [1, 0],
  bottom: [0, 1],
};

/** Whether the line at a pin runs straight to the frame: a title block hangs on it, and no part does. */
function leadsToFrame(page: SymbolPage, frame: Box, { at, side }: EdgePin): boolean {
  const [dx, dy] = WAYS[side];
  let [x, y] = at;
  let since = 0;
  // A page a little askew: the line is sought beside its way.
  for (let by = 0; since <= page.line; by++) {
    [x, y] = [x + dx, y + dy];
    const place = { left: x, top: y, right: x, bottom: y };
    if (by > 2 * page.line && isOnFrame(page, frame, place)) return true;
    const isOn = nearest(page, x, y) <= page.line * (1 + by / (40 * page.line));
    since = isOn ? 0 : since + 1;
  }
  return false;
}
