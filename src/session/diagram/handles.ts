import { add, distance, type Point, scale } from "../../base/index.ts";
import { toSheet } from "../../circuit/index.ts";
import { type Id, type PinId, splitRef } from "../../job/index.ts";
import { shapeOf, toSymbol, unitOf } from "./part-shape.ts";
import type { Scene } from "./scene.ts";

/** Something to take hold of on what is selected. `at` in pixels of the sheet. */
export type Handle =
  /** A corner or side of a module's box; `side` is -1, 0 or 1 in each direction. */
  | { readonly grab: "size"; readonly part: Id; readonly side: Point; readonly at: Point }
  | { readonly grab: "turn"; readonly part: Id; readonly at: Point }
  | { readonly grab: "scale"; readonly part: Id; readonly at: Point }
  /** Slides a module's pin along the edge. */
  | { readonly grab: "slide"; readonly part: Id; readonly pin: PinId; readonly at: Point }
  | { readonly grab: "corner"; readonly wire: Id; readonly index: number; readonly at: Point }
  | { readonly grab: "end"; readonly wire: Id; readonly which: "from" | "to"; readonly at: Point };

const SIDES: readonly Point[] = [
  [-1, -1],
  [0, -1],
  [1, -1],
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
];

/** How far handles stand off from what they belong to, pixels of the screen. */
const OFF = 26;

/** The handles of a single selected thing; none where several are selected. `pixel`: sheet per screen. */
export function handlesOf(scene: Scene, selection: readonly string[], pixel: number): Handle[] {
  const [ref, ...others] = selection;
  if (ref === undefined || others.length > 0) return [];
  const wire = scene.wireById.get(ref);
  if (wire) {
    const last = wire.points.length - 1;
    return wire.points.map((at, index): Handle => {
      if (index === 0) return { grab: "end", wire: ref, which: "from", at };
      if (index === last) return { grab: "end", wire: ref, which: "to", at };
      return { grab: "corner", wire: ref, index: index - 1, at };
    });
  }
  const spot = scene.pins.get(ref);
  const owner = spot && scene.partById.get(splitRef(ref).owner);
  if (spot && owner?.part.kind === "module") {
    const inward: Point = spot.out ? scale(spot.out, -OFF * pixel) : [OFF * pixel, 0];
    const at = add(spot.at, inward);
    return [{ grab: "slide", part: owner.part.id, pin: spot.pin, at }];
  }
  const shape = scene.partById.get(ref);
  return shape ? partHandles(shape.part.id, scene, pixel) : [];
}

function partHandles(id: Id, scene: Scene, pixel: number): Handle[] {
  const shape = scene.partById.get(id);
  if (!shape) return [];
  const { box, local, part } = shapeOf(shape.part);
  const handles: Handle[] = [
    // Off the corner: above and beside it the words of the part stand.
    { grab: "turn", part: id, at: [box.left - 18 * pixel, box.top - 18 * pixel] },
  ];
  if (part.kind === "module") {
    for (const side of SIDES) {
      const at = toSheet(part, [local.right * side[0], local.bottom * side[1]]);
      handles.push({ grab: "size", part: id, side, at });
    }
  } else if (local.right - local.left > 1) {
    const off = 8 * pixel;
    handles.push({ grab: "scale", part: id, at: [box.right + off, box.bottom + off] });
  }
  return handles;
}

/** The handle nearest to `p` within `reach` pixels of the sheet. */
export function handleAt(handles: readonly Handle[], p: Point, reach: number): Handle | null {
  let best: Handle | null = null;
  let nearest = reach;
  for (const handle of handles) {
    const away = distance(handle.at, p);
    if (away > nearest) continue;
    nearest = away;
    best = handle;
  }
  return best;
}

/** Size and middle of a module's box after the handle at `side` was taken to `to`. */
export function boxAfter(
  scene: Scene,
  id: Id,
  side: Point,
  to: Point,
): { size: Point; middle: Point } | null {
  const shape = scene.partById.get(id);
  if (!shape) return null;
  const { part, local } = shape;
  const unit = unitOf(part);
  const at = scale(toSymbol(part, to), unit);
  const half: Point = [local.right * unit, local.bottom * unit];
  const least = 2 * unit;
  const edge = (axis: 0 | 1): readonly [number, number] => {
    if (side[axis] === 0) return [-half[axis], half[axis]];
    return side[axis] > 0
      ? [-half[axis], Math.max(-half[axis] + least, at[axis])]
      : [Math.min(half[axis] - least, at[axis]), half[axis]];
  };
  const [left, right] = edge(0);
  const [top, bottom] = edge(1);
  const middle = toSheet(part, scale([(left + right) / 2, (top + bottom) / 2], 1 / unit));
  return { size: [right - left, bottom - top], middle };
}
