import type { UntracedView } from "../rule.ts";
import { isSame, Last } from "./keep.ts";
import type { Now } from "./now.ts";

const BEGUN: UntracedView = { placed: 0, chief: [] };

/** Looks at whether any wire is drawn at all. */
export class UntracedViews {
  private readonly last = new Last<readonly UntracedView[]>();

  of({ circuit: { parts, wires } }: Now): readonly UntracedView[] {
    const isBegun = wires.length > 0;
    return this.last.of([isBegun, isBegun ? null : parts], (before) => {
      const modules = parts.filter(({ kind }) => kind === "module");
      const chief = (modules.length > 0 ? modules : parts.slice(0, 1)).map(({ id }) => id);
      const now = isBegun ? BEGUN : { placed: parts.length, chief };
      const [was] = before ?? [];
      return before && was && isSame(was, now) ? before : [now];
    });
  }
}
