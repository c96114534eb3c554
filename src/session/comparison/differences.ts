import { compareColours, mayBeGauge } from "../../standards/index.ts";
import type { CellMark, MachineCell, Trait, WireLook } from "./comparison.ts";

/** In what a wire is not as drawn; what either side does not say is no difference. */
export function marksOf(wire: WireLook, drawn: WireLook): readonly CellMark[] {
  const marks: CellMark[] = [];
  if (wire.colour && drawn.colour) {
    const shown = compareColours(wire.colour, drawn.colour);
    if (shown !== "same") marks.push(shown === "turned" ? "turned" : "colour");
  }
  if (wire.number !== null && drawn.number !== null && !isOneNumber(wire.number, drawn.number))
    marks.push("number");
  if (isOtherSize(wire, drawn)) marks.push("size");
  return marks;
}

/** Drawn in mm² and as a gauge, it is another size only where it is neither. */
function isOtherSize({ mm2 }: WireLook, drawn: WireLook): boolean {
  if (mm2 === null || (drawn.mm2 === null && drawn.awg === null)) return false;
  return mm2 !== drawn.mm2 && !(drawn.awg !== null && mayBeGauge(mm2, drawn.awg));
}

const isOneNumber = (a: string, b: string) => a.trim() === b.trim();

/** In what the machines' cells of one cavity are unlike; a cell that says nothing is like any. */
export function differencesAmong(cells: readonly MachineCell[]): readonly Trait[] {
  const unlike = <T>(of: (cell: MachineCell) => T | null, isSame: (a: T, b: T) => boolean) => {
    const said = cells.map(of).filter((one) => one !== null);
    return said.some((one) => !isSame(one, said[0] as T));
  };
  const equal = (a: unknown, b: unknown) => a === b;
  const found: readonly (readonly [Trait, boolean])[] = [
    [
      "colour",
      unlike(
        ({ wire }) => wire.colour,
        (a, b) => compareColours(a, b) === "same",
      ),
    ],
    ["number", unlike(({ wire }) => wire.number, isOneNumber)],
    ["size", unlike(({ wire }) => wire.mm2, equal)],
    ["printed word", unlike(({ verdict }) => verdict, equal)],
    ["meter", unlike(({ meterRole }) => (meterRole === "" ? null : meterRole), equal)],
    ["reading", unlike(comparedReading, equal)],
  ];
  return found.flatMap(([trait, differs]) => (differs ? [trait] : []));
}

/** Whether the reading is as a healthy machine's; null where nothing can be compared. */
function comparedReading({ reading }: MachineCell): "inside" | "outside" | null {
  const verdict = reading?.verdict;
  return verdict === "inside" || verdict === "outside" ? verdict : null;
}
