import { type Box, growBox } from "../../../../base/index.ts";
import { type PinRef, splitRef } from "../../../../job/index.ts";
import type { Verdict } from "../../../../roles/index.ts";
import {
  type ChangesDrawn,
  type Crossing,
  crossingsOf,
  type PartShape,
  type Scene,
  unitOf,
  type WireShape,
} from "../../../../session/index.ts";
import { formatColour } from "../../../../standards/index.ts";
import type { Palette } from "../../../theme/theme.tsx";
import type { Differences } from "./kept-view.ts";
import { valueWords } from "./value-words.ts";

/** All that the trace shows. As long as none of it changes, it is the same object. */
export interface Traced {
  readonly scene: Scene | null;
  readonly palette: Palette;
  readonly verdicts: ReadonlyMap<PinRef, Verdict>;
  readonly colours: boolean;
  readonly typeset: boolean;
  readonly operating: boolean;
  readonly changes: ChangesDrawn | null;
}

/** Symbol units that words of a part nearby may reach into a place. */
const REACH = 40;

/**
 * Where two traces differ, with room for lines and words; null where they differ as a whole. `line`
 * is the width of a plain line, `unit` that of a symbol unit, pixels of the sheet.
 */
export function differences(
  before: Traced,
  now: Traced,
  line: number,
  unit: number,
): Differences | null {
  const from = before.scene;
  const to = now.scene;
  const isOther =
    before.palette !== now.palette ||
    before.colours !== now.colours ||
    before.typeset !== now.typeset ||
    before.operating !== now.operating ||
    before.changes !== now.changes;
  if (isOther || !from || !to || from.sheet !== to.sheet) return null;
  const boxes: Box[] = [];
  const parts = new Set<PartShape>([
    ...differing(from.parts, to.parts),
    ...modulesToldAnew(before, now),
  ]);
  for (const shape of parts) boxes.push(growBox(shape.box, roomOfPart(shape, line)));
  const wires = new Set([...differing(from.wires, to.wires), ...hoppingAnew(from, to)]);
  for (const shape of wires) {
    const end = (to.partById.get(splitRef(shape.wire.from).owner) ?? from.parts[0])?.part;
    boxes.push(growBox(shape.box, roomOfWire(shape, end ? unitOf(end) : unit, line)));
  }
  return { boxes, reach: REACH * unit + LINES * line };
}

/** What is in one list and not in the other. */
function differing<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  if (before === now) return [];
  const old = new Set(before);
  const kept = new Set(now);
  return [...now.filter((one) => !old.has(one)), ...before.filter((one) => !kept.has(one))];
}

/** The wires that stay and hop elsewhere: a hop that goes makes room for others along the wire. */
function hoppingAnew(from: Scene, to: Scene): readonly WireShape[] {
  const [before, now] = [crossingsOf(from), crossingsOf(to)];
  if (before === now) return [];
  const isSame = (a: readonly Crossing[] = [], b: readonly Crossing[] = []) =>
    a.length === b.length &&
    a.every(({ segment, along }, place) => {
      const other = b[place];
      return other?.segment === segment && other.along === along;
    });
  return to.wires.filter(({ wire }) => !isSame(before.get(wire.id), now.get(wire.id)));
}

/** The modules of which a pin has another verdict. */
function modulesToldAnew(before: Traced, now: Traced): readonly PartShape[] {
  if (before.verdicts === now.verdicts) return [];
  const pins = new Set([...before.verdicts.keys(), ...now.verdicts.keys()]);
  const owners = new Set(
    [...pins]
      .filter((pin) => before.verdicts.get(pin) !== now.verdicts.get(pin))
      .map((pin) => splitRef(pin).owner),
  );
  return [...owners].flatMap((id) => now.scene?.partById.get(id) ?? []);
}

/** Dots and rings are never smaller than some lines' widths, however far away. */
const LINES = 8;

/** Words stand beside a part or run out of it; no letter is wider than one and a half units. */
function roomOfPart({ part }: PartShape, line: number): number {
  const words = [
    [part.id],
    [part.label, valueWords(part)],
    ["place" in part ? part.place : ""],
    ...(part.kind === "module" ? part.pins.map(({ id, printed }) => [id, printed, "✓"]) : []),
  ].map((texts) => texts.filter(Boolean).join("  ").length);
  return unitOf(part) * (8 + 1.5 * Math.max(...words)) + LINES * line;
}

/** Its words lie along the wire's longest run, half of them to each side of its middle. */
function roomOfWire({ wire }: WireShape, unit: number, line: number): number {
  const words = `${wire.number ?? ""} ${wire.colour ? formatColour(wire.colour) : ""}`.length;
  return unit * (4 + words) + LINES * line;
}
