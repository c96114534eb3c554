import type { Point } from "../../base/index.ts";
import { DEFAULT_UNIT, kindOf } from "../../circuit/index.ts";
import type { Id, Job, Part, PartKindName, Sheet } from "../../job/index.ts";
import { idSource, plain } from "./draft.ts";

/** Symbol units across a picture where nothing has been placed yet. */
const UNITS_ACROSS = 170;

/** Pixels per symbol unit for the next part of a sheet: that of the newest part, else by the picture. */
export function unitFor(job: Job, sheet: Id): number {
  const last = job.diagram.parts.findLast((part) => part.sheet === sheet && part.unit);
  if (last?.unit) return last.unit;
  const width = job.diagram.sheets.find((one) => one.id === sheet)?.image?.width;
  return width ? Math.max(2, Math.round((width / UNITS_ACROSS) * 2) / 2) : DEFAULT_UNIT;
}

/** Adds a part with a free id and its kind's defaults. Returns its id. */
export function addPart(
  draft: Job,
  kind: PartKindName,
  sheet: Id,
  at: Point,
  turn = 0,
  nextId = idSource(draft),
): Id {
  const about = kindOf(kind);
  const id = nextId(about.letter);
  const part = {
    ...structuredClone(about.defaults(draft.systemVoltage)),
    id,
    kind,
    sheet,
    at: [at[0], at[1]],
    turn,
    unit: unitFor(plain(draft), sheet),
  } as Part;
  draft.diagram.parts.push(part);
  return id;
}

/** The sheet of that id; when there is none, a first sheet without a picture is begun. */
export function sheetForDrawing(draft: Job, sheet: Id | null): Id {
  const known = draft.diagram.sheets.find((one) => one.id === sheet) ?? draft.diagram.sheets[0];
  if (known) return known.id;
  return addSheet(draft, {});
}

/** Adds a sheet with a free id. Returns the id. */
export function addSheet(draft: Job, about: Omit<Sheet, "id">): Id {
  const id = idSource(draft)("sheet");
  draft.diagram.sheets.push({ id, ...about });
  return id;
}
