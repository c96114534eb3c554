import { flat, InStep } from "../base/index.ts";
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

interface InView {
  readonly view: object;
  readonly found: readonly Finding[];
}

class KeptFindings {
  private readonly rule: Rule;
  private readonly inView = new WeakMap<object, InView>();
  private readonly all = new Last<readonly Finding[]>();
  /** In the order of the views. */
  private kept: readonly InView[] = [];

  constructor(rule: Rule) {
    this.rule = rule;
  }

  of(views: AllViews): readonly Finding[] {
    const mine: readonly Views[keyof Views][] = views[this.rule.about];
    return this.all.of([mine], () => {
      const old = new InStep(
        this.kept,
        ({ view }) => view,
        (view) => this.inView.get(view),
      );
      this.kept = mine.map((view) => old.find(view) ?? this.in(view));
      return flat(this.kept.map(({ found }) => found));
    });
  }

  private in(view: Views[keyof Views]): InView {
    const { id, severity } = this.rule;
    // `about` and `find` of one rule belong together; the compiler can't follow that through a union.
    const find = this.rule.find as (view: Views[keyof Views]) => readonly Found[];
    const found = find(view).map(({ corrections = [], ...one }) => ({
      rule: id,
      severity,
      ...one,
      ...(corrections.length > 0 ? { corrections } : {}),
    }));
    const kept: InView = { view, found };
    this.inView.set(view, kept);
    return kept;
  }
}
