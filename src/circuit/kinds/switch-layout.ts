import type { Point } from "../../base/index.ts";
import type { PartOf, PinId, Position } from "../../job/index.ts";
import type { PinPlace, Stroke } from "./kind.ts";
import { arc, box, circle, dashed, line, outline, text } from "./strokes.ts";
import { REACH } from "./two-pin.ts";

type Switch = PartOf<"switch">;

/** Units between the rows of throws. */
const ROW = 2;

/** One pole: the pin that its contacts share, and the pins that it can be joined to. */
interface Pole {
  readonly common: PinId;
  readonly throws: readonly PinId[];
}

/** Contacts that share pins belong to one pole; its common is the pin that most of them share. */
function polesOf(part: Switch): readonly Pole[] {
  const groups: Set<PinId>[] = [];
  for (const { between } of part.contacts) {
    const touched = groups.filter((group) => between.some((pin) => group.has(pin)));
    const merged = new Set([...touched.flatMap((group) => [...group]), ...between]);
    const first = touched[0] ? groups.indexOf(touched[0]) : groups.length;
    groups[first] = merged;
    for (const other of touched.slice(1)) groups.splice(groups.indexOf(other), 1);
  }
  return groups.flatMap((group) => {
    const uses = (pin: PinId) =>
      part.contacts.filter((contact) => contact.between.includes(pin)).length;
    const [common, ...throws] = [...group].sort((a, b) => uses(b) - uses(a));
    return common === undefined ? [] : [{ common, throws }];
  });
}

interface Row {
  readonly pole: Pole;
  readonly commonAt: Point;
  readonly throwsAt: readonly { pin: PinId; at: Point }[];
}

/** Commons on the left, throws on the right, the poles one below the other about the middle. */
function rowsOf(part: Switch): readonly Row[] {
  const poles = polesOf(part);
  const count = poles.reduce((sum, pole) => sum + Math.max(1, pole.throws.length), 0);
  let y = (-(count - 1) * ROW) / 2;
  return poles.map((pole) => {
    const throwsAt = pole.throws.map((pin, index) => ({
      pin,
      at: [REACH, y + index * ROW] as Point,
    }));
    const commonAt: Point = [-REACH, y + ((Math.max(1, throwsAt.length) - 1) * ROW) / 2];
    y += Math.max(1, throwsAt.length) * ROW;
    return { pole, commonAt, throwsAt };
  });
}

export function switchPins(part: Switch): readonly PinPlace[] {
  return rowsOf(part).flatMap((row) => [
    { id: row.pole.common, at: row.commonAt },
    ...row.throwsAt.map(({ pin, at }) => ({ id: pin, at })),
  ]);
}

/** The sign of what moves the contacts, above the middle of the top arm. */
function actuator(part: Switch, top: number): readonly Stroke[] {
  const y = top - 1.6;
  switch (part.control) {
    case "key":
      return [circle([0, y - 0.6], 0.6), line([-0.6, y], [0.6, y])];
    case "isolator":
      return [line([-1, y], [1, y]), line([1, y], [1, y - 0.9])];
    case "emergency-stop":
      return [arc([0, y], 1, 180, 360), line([-1, y], [1, y])];
    case "operator":
      return [line([-0.8, y], [0.8, y])];
    case "limit":
      return [circle([0, y - 0.5], 0.5)];
    case "pressure":
      return [box([-0.9, y - 1.5], [0.9, y]), text([0, y - 0.75], "p", 1.2)];
    case "temperature":
      return [box([-0.9, y - 1.5], [0.9, y]), text([0, y - 0.75], "t°", 1.2)];
    case "level":
      return [line([-1, y], [1, y]), arc([0, y], 0.7, 180, 360)];
    case "interlock":
      return [outline([-0.8, y], [0.8, y], [0, y - 1.2])];
  }
}

/** As it lies at rest: closed throws touched by an arm, open ones left with a gap. */
export function drawSwitch(part: Switch, rest: Position | undefined): readonly Stroke[] {
  const closed = (a: PinId, b: PinId) =>
    part.contacts.some(
      ({ between, closedIn }) =>
        between.includes(a) && between.includes(b) && rest !== undefined && closedIn.includes(rest),
    );
  const strokes: Stroke[] = [];
  const rows = rowsOf(part);
  let top = 0;
  let bottom = 0;
  for (const { pole, commonAt, throwsAt } of rows) {
    const hinge: Point = [-1.5, commonAt[1]];
    strokes.push(line(commonAt, hinge), circle(hinge, 0.2));
    const touched = throwsAt.filter(({ pin }) => closed(pole.common, pin));
    for (const { at } of throwsAt) {
      strokes.push(line(at, [1.6, at[1]]), circle([1.6, at[1]], 0.2));
    }
    for (const { at } of touched) strokes.push(line(hinge, [1.6, at[1]]));
    const first = throwsAt[0];
    if (touched.length === 0 && first) strokes.push(line(hinge, [1.4, first.at[1] - 1.1]));
    top = Math.min(top, ...throwsAt.map(({ at }) => at[1]));
    bottom = Math.max(bottom, commonAt[1]);
  }
  // one handle moves all poles
  strokes.push(dashed([0, top - 1.6], [0, rows.length > 1 ? bottom : commonOf(rows)]));
  return [...strokes, ...actuator(part, top)];
}

const commonOf = (rows: readonly Row[]): number => (rows[0] ? rows[0].commonAt[1] - 0.4 : 0);
