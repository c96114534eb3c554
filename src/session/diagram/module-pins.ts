import { type Point, scale } from "../../base/index.ts";
import { moduleSize, pinsOf } from "../../circuit/index.ts";
import { type Id, type Job, type PartOf, type PinId, pinRef } from "../../job/index.ts";
import { forgetThings } from "../forget.ts";
import { draftPart, plain, takeOut } from "./draft.ts";
import { withWiresFollowing } from "./follow.ts";
import { shapeOf, toSymbol, unitOf } from "./part-shape.ts";
import { removeWiresOn } from "./remove.ts";

type Module = PartOf<"module">;

/** Half the width and half the height of the drawn box, pixels; it lies about the module's `at`. */
export function moduleHalf(part: Module): Point {
  return scale(moduleSize(part), unitOf(part) / 2);
}

/** The spot of the box's edge nearest to a point of the sheet, pixels from `at` before the turn. */
export function nearestOnEdge(part: Module, at: Point): [number, number] {
  const [w, h] = moduleHalf(part);
  const [x, y] = scale(toSymbol(part, at), unitOf(part));
  const within: Point = [Math.max(-w, Math.min(w, x)), Math.max(-h, Math.min(h, y))];
  const spots: [number, number][] = [
    [-w, within[1]],
    [w, within[1]],
    [within[0], -h],
    [within[0], h],
  ];
  spots.sort((a, b) => Math.hypot(a[0] - x, a[1] - y) - Math.hypot(b[0] - x, b[1] - y));
  const [px, py] = spots[0] as [number, number];
  return [Math.round(px * 10) / 10, Math.round(py * 10) / 10];
}

/** The mark that comes after the last one: 8 after 7, D after C; else the first free number. */
export function nextMark(taken: readonly PinId[]): PinId {
  const last = taken.at(-1) ?? "0";
  const tries: PinId[] = [];
  if (/^\d+$/.test(last)) tries.push(String(Number(last) + 1));
  if (/^[A-Ya-y]$/.test(last)) {
    let code = last.charCodeAt(0) + 1;
    // Moulded letters often leave out I, O and Q (common practice, no source).
    while (/[IOQioq]/.test(String.fromCharCode(code))) code++;
    tries.push(String.fromCharCode(code));
  }
  for (let number = 1; number <= taken.length + 1; number++) tries.push(String(number));
  return tries.find((mark) => !taken.includes(mark)) ?? `${taken.length + 1}`;
}

function changeModule(draft: Job, id: Id, change: (module: Module) => void): void {
  withWiresFollowing(
    draft,
    new Set([id]),
    () => {
      const part = draftPart(draft, id);
      if (part?.kind === "module") change(part);
    },
    (corner) => corner,
  );
}

/** Writes down where each pin lies now, so that one more does not shift the others. */
function pinDown(module: Module): void {
  const now = plain(module);
  const unit = unitOf(now);
  const [w, h] = moduleHalf(now);
  if (!now.size) module.size = [w * 2, h * 2];
  const places = pinsOf(now);
  module.pins.forEach((pin, index) => {
    const place = places[index];
    if (!place || pin.at) return;
    const [x, y] = scale(place.at, unit);
    pin.at = [x, y];
  });
}

/**
 * Adds a pin. `at`, a point of the sheet, puts it on the edge nearest to it; without it the pins
 * spread evenly, unless others have places of their own. Returns its id.
 */
export function addModulePin(draft: Job, id: Id, at: Point | null, printed?: string): PinId | null {
  const part = plain(draft).diagram.parts.find((one) => one.id === id);
  if (part?.kind !== "module") return null;
  const mark = nextMark(part.pins.map((pin) => pin.id));
  const about = printed === undefined ? { id: mark } : { id: mark, printed };
  changeModule(draft, id, (module) => {
    if (at) {
      pinDown(module);
      module.pins.push({ ...about, at: nearestOnEdge(plain(module), at) });
    } else if (part.pins.some((pin) => pin.at)) {
      pinDown(module);
      module.pins.push({ ...about, at: nearestOnEdge(part, below(part)) });
    } else module.pins.push(about);
  });
  return mark;
}

/** A point of the sheet a row beyond the last pin. */
function below(part: Module): Point {
  const last = shapeOf(part).pins.at(-1)?.at ?? part.at;
  return [last[0], last[1] + 3 * unitOf(part)];
}

/** Slides a pin along the edge to the spot nearest to a point of the sheet. */
export function moveModulePin(draft: Job, id: Id, pin: PinId, at: Point): void {
  changeModule(draft, id, (module) => {
    pinDown(module);
    const moved = module.pins.find((one) => one.id === pin);
    if (moved) moved.at = nearestOnEdge(plain(module), at);
  });
}

/** Takes a pin out, with the wires and links on it. */
export function removeModulePin(draft: Job, id: Id, pin: PinId): void {
  removeWiresOn(draft, (ref) => ref === pinRef(id, pin));
  takeOut(draft.links, (link) => link.pin === pinRef(id, pin));
  forgetThings(draft, (ref) => ref === pinRef(id, pin));
  changeModule(draft, id, (module) => {
    const apart = (pins: readonly PinId[]) => !pins.includes(pin);
    takeOut(module.pins, (one) => one.id === pin);
    if (module.power) {
      module.power.supply = module.power.supply.filter((one) => one !== pin);
      module.power.ground = module.power.ground.filter((one) => one !== pin);
    }
    if (module.sources) module.sources = module.sources.filter((one) => apart(one.between));
    if (module.behaviour) {
      module.behaviour.paths = module.behaviour.paths.filter(
        (one) => apart(one.between) && one.input !== pin,
      );
      if (module.behaviour.loads) {
        module.behaviour.loads = module.behaviour.loads.filter((one) => apart(one.between));
      }
    }
  });
}

/** Gives the box another size about another middle; pins keep their share of each edge. */
export function resizeModule(draft: Job, id: Id, size: Point, middle: Point): void {
  changeModule(draft, id, (module) => {
    const [w, h] = moduleHalf(plain(module));
    for (const pin of module.pins) {
      if (!pin.at) continue;
      pin.at = [(pin.at[0] * size[0]) / (2 * w || 1), (pin.at[1] * size[1]) / (2 * h || 1)];
    }
    module.size = [size[0], size[1]];
    module.at = [middle[0], middle[1]];
  });
}
