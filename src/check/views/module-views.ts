import { sameList } from "../../base/index.ts";
import { type CavityRef, ROLE_NAMES } from "../../job/index.ts";
import type { MeterEvidence } from "../../readings/index.ts";
import { judgeWord, type PaperRole, printedWord, type Role } from "../../roles/index.ts";
import type { ModuleView } from "../rule.ts";
import { keepList } from "./keep.ts";
import type { PaperModule } from "./paper-modules.ts";

interface Known {
  readonly paper: PaperModule;
  readonly evidence: readonly (MeterEvidence | null)[];
  readonly view: ModuleView;
}

/** Sets what the meter proved beside what paper and circuit say; it never changes their verdict. */
export class ModuleViews {
  private known = new Map<PaperModule, Known>();
  private last: readonly ModuleView[] = [];

  of(
    modules: readonly PaperModule[],
    evidence: ReadonlyMap<CavityRef, MeterEvidence>,
  ): readonly ModuleView[] {
    const next: typeof this.known = new Map();
    const views = modules.map((paper) => {
      if (evidence.size === 0) {
        const known = this.known.get(paper);
        const now = known?.evidence.length === 0 ? known : view(paper, []);
        next.set(paper, now);
        return now.view;
      }
      const found = paper.paper.map(({ cavity }) =>
        cavity === null ? null : (evidence.get(cavity) ?? null),
      );
      const known = this.known.get(paper);
      const now = known && sameList(known.evidence, found) ? known : view(paper, found);
      next.set(paper, now);
      return now.view;
    });
    this.known = next;
    this.last = keepList(this.last, views);
    return this.last;
  }
}

function view(paper: PaperModule, evidence: readonly (MeterEvidence | null)[]): Known {
  const { module, wired, tied, words } = paper;
  const roles = paper.paper.map((role, index): Role => {
    const pin = module.pins[index];
    const found = evidence[index] ?? null;
    if (!pin || !found || found.confirmedBy.length === 0) return unproven(role);
    const [only] = found.fits;
    return {
      ...role,
      meterRole: found.fits.length === 1 && only ? only : null,
      meterFits: found.fits,
      meterRuledOut: found.ruledOut,
      meterVerdict: judgeWord(printedWord(pin, words), found.fits, null).verdict,
    };
  });
  return { paper, evidence, view: { module, roles, wired, tied, words } };
}

const unproven = (role: PaperRole): Role => ({
  ...role,
  meterRole: null,
  meterFits: ROLE_NAMES,
  meterVerdict: "unproven",
});
