import { add, distance, type Point, subtract, turn } from "../../base/index.ts";
import {
  type Id,
  type Job,
  LARGEST_NUMBER,
  ownerOf,
  type Part,
  SMALLEST_NUMBER,
  type Wire,
} from "../../job/index.ts";
import { type SquaringPlan, toPicture, toResult } from "../../scan/index.ts";
import { plain } from "../diagram/draft.ts";
import { unitOf } from "../diagram/part-shape.ts";
import { setPath } from "../diagram/split-wire.ts";

/** How places of a sheet go from its picture as it was to its picture as it will be. */
export interface SheetMove {
  readonly to: (at: Point) => Point;
  /** Quarter turns clockwise that the whole page makes; of a mirrored one they say nothing. */
  readonly quarters: number;
}

/** Pixels on either side of a place between which sizes and turns are measured. */
const STEP = 0.5;
/** Beyond so many diagonals of the page a camera's view of it says nothing. */
const FAR = 4;

/**
 * The way from a picture squared up in one manner to the same in another. A place that the one shows
 * beyond the horizon of the other goes along with the middle of the page.
 */
export function moveBetween(before: SquaringPlan, after: SquaringPlan): SheetMove {
  const middle: Point = [(before.width - 1) / 2, (before.height - 1) / 2];
  const far = FAR * Math.hypot(after.width, after.height);
  const seen = (at: Point): Point | null => {
    const [, , , , , , g, h] = before.toStraight;
    if (g * at[0] + h * at[1] + 1 <= 0) return null;
    return toResult(after, toPicture(before, at));
  };
  const centre = seen(middle) ?? middle;
  const near = (at: Point) => seen(at) ?? at;
  const { across, down } = spreadAt(near, middle);
  const to = (at: Point): Point => {
    const there = seen(at);
    if (there && distance(there, centre) <= far) return there;
    const [dx, dy] = subtract(at, middle);
    return [centre[0] + across[0] * dx + down[0] * dy, centre[1] + across[1] * dx + down[1] * dy];
  };
  // Of all turns the one that is nearest to what the page does.
  const angle = Math.atan2(across[1] - down[0], across[0] + down[1]);
  const quarters = (Math.round((2 * angle) / Math.PI) + 4) % 4;
  return { to, quarters: Number.isFinite(quarters) ? quarters : 0 };
}

/** Where a pixel to the right and a pixel down lead, from a place. */
function spreadAt(to: (at: Point) => Point, [x, y]: Point): { across: Point; down: Point } {
  return {
    across: subtract(to([x + STEP, y]), to([x - STEP, y])),
    down: subtract(to([x, y + STEP]), to([x, y - STEP])),
  };
}

const determinant = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];

/**
 * Takes all that is drawn on a sheet along when its picture is squared up anew: parts with their
 * size and quarter turn, modules with their boxes and pins, corners of wires, answers about lines;
 * on every machine, shown or not.
 */
export function moveDrawing(draft: Job, sheet: Id, move: SheetMove): void {
  const job = plain(draft);
  const lists = [
    { now: job.diagram, draft: draft.diagram },
    ...job.machines.flatMap((machine, m) =>
      (machine.changes ?? []).flatMap((change, c) => {
        const written = draft.machines[m]?.changes?.[c];
        return written ? [{ now: change, draft: written }] : [];
      }),
    ),
  ];
  const on = new Set<Id>();
  for (const { now, draft: written } of lists) {
    now.parts?.forEach((part, index) => {
      if (part.sheet !== sheet) return;
      on.add(part.id);
      if (written.parts) written.parts[index] = movedPart(part, move);
    });
  }
  const isOn = ({ from, to }: Wire) => on.has(ownerOf(from)) && on.has(ownerOf(to));
  for (const { now, draft: written } of lists) {
    now.wires?.forEach((wire, index) => {
      const into = wire.path && isOn(wire) ? written.wires?.[index] : undefined;
      if (into)
        setPath(
          into,
          (wire.path ?? []).map((at) => fine(move.to(at), at)),
        );
    });
  }
  const place = job.diagram.sheets.findIndex((one) => one.id === sheet);
  job.diagram.sheets[place]?.answers?.forEach((answer, index) => {
    const written = draft.diagram.sheets[place]?.answers?.[index];
    if (written) written.at = fine(move.to(answer.at), answer.at);
  });
}

/**
 * Hundredths of a pixel: finer than anybody draws. A place so far off the page that no number says where
 * it comes to lie stays where it `was`: a job with no number there could not be opened again.
 */
function fine([x, y]: Point, was: Point): [number, number] {
  const moved: [number, number] = [hundredth(x), hundredth(y)];
  return moved.every(Number.isFinite) ? moved : [was[0], was[1]];
}

/** A size in a job's bounds, rounded to parts of a pixel; else what it `was`. */
function sized(size: number, parts: number, was: number): number {
  const rounded = Math.round(size * parts) / parts;
  return rounded >= SMALLEST_NUMBER && rounded <= LARGEST_NUMBER ? rounded : was;
}

/** Never -0, which no file can hold. */
const hundredth = (value: number): number => Math.round(value * 100) / 100 + 0;

function movedPart(part: Part, { to, quarters }: SheetMove): Part {
  const { across, down } = spreadAt(to, part.at);
  const larger = Math.sqrt(Math.abs(determinant(across, down)));
  const unit = sized(unitOf(part) * larger, 1e4, unitOf(part));
  const moved = {
    ...part,
    at: fine(to(part.at), part.at),
    turn: (((part.turn + 90 * quarters) % 360) + 360) % 360,
    ...(unit === unitOf(part) ? {} : { unit }),
  };
  if (moved.kind !== "module") return moved;
  const on = (offset: Point) => to(add(part.at, turn(offset, part.turn)));
  const { size } = moved;
  return {
    ...moved,
    pins: moved.pins.map((pin) =>
      pin.at
        ? { ...pin, at: fine(turn(subtract(on(pin.at), moved.at), -moved.turn), pin.at) }
        : pin,
    ),
    ...(size
      ? {
          size: [
            sized(distance(on([-size[0] / 2, 0]), on([size[0] / 2, 0])), 100, size[0]),
            sized(distance(on([0, -size[1] / 2]), on([0, size[1] / 2])), 100, size[1]),
          ],
        }
      : {}),
  };
}
