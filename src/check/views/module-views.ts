import { sameList } from "../../base/index.ts";
import { type CavityRef, type Job, type ModulePin, ROLE_NAMES } from "../../job/index.ts";
import type { MeterEvidence } from "../../readings/index.ts";
import { judgeWord, type PaperRole, printedWord, type Role } from "../../roles/index.ts";
import type { ModuleView } from "../rule.ts";
import { keepInStep, keepList } from "./keep.ts";
import type { PaperModule } from "./paper-modules.ts";

interface Known {
  readonly paper: PaperModule;
  readonly evidence: readonly (MeterEvidence | null)[];
  readonly view: ModuleView;
}

/** Sets what the meter proved beside what paper and circuit say; it never changes their verdict. */
export class ModuleViews {
  /** In the order of the drawing. */
  private known: readonly Known[] = [];
  private last: readonly ModuleView[] = [];

  of(
    modules: readonly PaperModule[],
    evidence: ReadonlyMap<CavityRef, MeterEvidence>,
  ): readonly ModuleView[] {
    const were = this.known;
    this.known = keepInStep(were, modules, paperOf, (paper, known) => {
      if (evidence.size === 0) return known?.evidence.length === 0 ? known : view(paper, []);
      const found = paper.paper.map(({ cavity }) =>
        cavity === null ? null : (evidence.get(cavity) ?? null),
      );
      return known && sameList(known.evidence, found) ? known : view(paper, found);
    });
    if (this.known === were) return this.last;
    this.last = keepList(
      this.last,
      this.known.map((one) => one.view),
    );
    return this.last;
  }
}

const paperOf = ({ paper }: Known) => paper;

function view(paper: PaperModule, evidence: readonly (MeterEvidence | null)[]): Known {
  const { module, wired, tied, words } = paper;
  const roles = paper.paper.map((role, index) =>
    withMeter(role, module.pins[index], evidence[index] ?? null, words),
  );
  return { paper, evidence, view: { module, roles, wired, tied, words } };
}

/** The role of a module's pin with what was measured at its cavity; `null`: nothing was. */
export function withMeter(
  role: PaperRole,
  pin: ModulePin | undefined,
  found: MeterEvidence | null,
  words: Job["words"],
): Role {
  if (!pin || !found || found.confirmedBy.length === 0) return unproven(role);
  const [only] = found.fits;
  return {
    ...role,
    meterRole: found.fits.length === 1 && only ? only : null,
    meterFits: found.fits,
    meterRuledOut: found.ruledOut,
    meterVerdict: judgeWord(printedWord(pin, words), found.fits, null).verdict,
  };
}

const unproven = (role: PaperRole): Role => ({
  ...role,
  meterRole: null,
  meterFits: ROLE_NAMES,
  meterVerdict: "unproven",
});
