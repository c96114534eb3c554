import type { Finding } from "./finding.ts";
import type { Found, Rule, Views } from "./rule.ts";
import { RULES } from "./rules/index.ts";
import { Last } from "./views/keep.ts";
import type { AllViews } from "./views/overview.ts";

/** What each rule found in each view, kept for as long as the view is the same. */
export class Findings {
  private readonly byRule = RULES.map((rule) => new KeptFindings(rule));

  /** In a stable order: by severity, by rule, then in the order of the views. */
  of(views: AllViews): readonly Finding[] {
    return this.byRule.flatMap((kept) => kept.of(views));
  }
}

class KeptFindings {
  private readonly rule: Rule;
  private readonly inView = new WeakMap<object, readonly Finding[]>();
  private readonly all = new Last<readonly Finding[]>();
  /** The views of before and what was found in each, place by place. */
  private views: readonly object[] = [];
  private found: readonly (readonly Finding[])[] = [];

  constructor(rule: Rule) {
    this.rule = rule;
  }

  of(views: AllViews): readonly Finding[] {
    const mine: readonly Views[keyof Views][] = views[this.rule.about];
    return this.all.of([mine], () => {
      const { views: before, found: old } = this;
      this.found = mine.map((view, at) =>
        view === before[at] ? (old[at] as readonly Finding[]) : this.in(view),
      );
      this.views = mine;
      return this.found.flat();
    });
  }

  private in(view: Views[keyof Views]): readonly Finding[] {
    let found = this.inView.get(view);
    if (!found) {
      const { id, severity } = this.rule;
      // `about` and `find` of one rule belong together; the compiler can't follow that through a union.
      const find = this.rule.find as (view: Views[keyof Views]) => readonly Found[];
      found = find(view).map((one) => ({ rule: id, severity, ...one }));
      this.inView.set(view, found);
    }
    return found;
  }
}
