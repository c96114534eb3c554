import { add, boundsOf, type Point, scale, subtract, turn } from "../../base/index.ts";
import { type Id, type Job, splitRef } from "../../job/index.ts";
import { draftPart, draftWire, eachDraftPart, plain } from "./draft.ts";
import { withWiresFollowing } from "./follow.ts";
import { setPath } from "./split-wire.ts";

const write = ([x, y]: Point): [number, number] => [x, y];

/** Moves parts, with their wires following, and the corners of wires chosen by themselves. */
export function moveThings(draft: Job, ids: readonly string[], by: Point): void {
  const job = plain(draft);
  const chosen = new Set(ids);
  const parts = new Set(job.diagram.parts.filter(({ id }) => chosen.has(id)).map(({ id }) => id));
  const shift = (point: Point) => add(point, by);
  for (const wire of job.diagram.wires) {
    const held = parts.has(splitRef(wire.from).owner) || parts.has(splitRef(wire.to).owner);
    if (!chosen.has(wire.id) || held || !wire.path) continue;
    const written = draftWire(draft, wire.id);
    if (written) setPath(written, wire.path.map(shift));
  }
  if (parts.size === 0) return;
  withWiresFollowing(
    draft,
    parts,
    () => {
      eachDraftPart(draft, parts, (part) => {
        part.at = write(shift(part.at));
      });
    },
    shift,
  );
}

/** Turns parts by `degrees` clockwise: one about its own `at`, several about their middle. */
export function turnParts(draft: Job, ids: readonly Id[], degrees: number): void {
  const wanted = new Set(ids);
  const chosen = plain(draft).diagram.parts.filter((part) => wanted.has(part.id));
  const box = boundsOf(chosen.map((part) => part.at));
  if (!box) return;
  const middle = scale([box.left + box.right, box.top + box.bottom], 0.5);
  const about = (point: Point) => add(middle, turn(subtract(point, middle), degrees));
  withWiresFollowing(
    draft,
    wanted,
    () => {
      eachDraftPart(draft, wanted, (part) => {
        part.at = write(about(part.at));
        part.turn = (((part.turn + degrees) % 360) + 360) % 360;
      });
    },
    about,
  );
}

/** Draws a part at another size, pixels per symbol unit. */
export function setUnit(draft: Job, id: Id, unit: number): void {
  withWiresFollowing(
    draft,
    new Set([id]),
    () => {
      const part = draftPart(draft, id);
      if (part) part.unit = unit;
    },
    (corner) => corner,
  );
}
