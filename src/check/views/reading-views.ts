import type { Reading } from "../../job/index.ts";
import type { Role } from "../../roles/index.ts";
import type { ReadingView } from "../rule.ts";
import type { Judged } from "./judged-readings.ts";
import { keepList, Last, Views } from "./keep.ts";

/** Looks at the judged readings, and at the roles of the cavities that they were taken at. */
export class ReadingViews {
  private readonly last = new Last<readonly ReadingView[]>();
  private readonly views = new Views<Reading, ReadingView>();

  of(all: readonly Judged[], roles: readonly Role[]): readonly ReadingView[] {
    return this.last.of([all, roles], (before) => {
      if (all.length === 0) return keepList(before, []);
      const probes = new Set(all.flatMap(({ reading }) => [reading.red, reading.black]));
      const there = roles.filter(({ cavity }) => cavity !== null && probes.has(cavity));
      return keepList(before, this.views.of(all.map((one) => [one.reading, viewOf(one, there)])));
    });
  }
}

function viewOf({ reading, judged, forbids }: Judged, roles: readonly Role[]): ReadingView {
  if (judged.verdict === "invalid") return { reading, judged, forbids: [] };
  const found = roles.flatMap((role) => {
    const { cavity, printedRole } = role;
    if (cavity === null || printedRole === null || printedRole === "unrecognised") return [];
    if (reading.red !== cavity && reading.black !== cavity) return [];
    const why = forbids(printedRole, cavity);
    return why === null ? [] : [{ role, why }];
  });
  return { reading, judged, forbids: found };
}
