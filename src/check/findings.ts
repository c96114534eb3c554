import { flat, ListChange } from "../base/index.ts";
import type { Finding } from "./finding.ts";
import type { Found, Rule, Views } from "./rule.ts";
import { RULES } from "./rules/index.ts";
import type { AllViews } from "./views/overview.ts";

type AnyView = Views[keyof Views];

/** What each rule found in each view, kept for as long as the view is the same. */
export class Findings {
  private readonly byRule = RULES.map((rule) => new KeptFindings(rule));
  private before: Partial<AllViews> = {};

  /** In a stable order: by severity, by rule, then in the order of the views. */
  of(views: AllViews): readonly Finding[] {
    const { before } = this;
    const changes = new Map<keyof Views, ListChange<AnyView> | null>();
    for (const about of Object.keys(views) as (keyof Views)[])
      changes.set(
        about,
        views[about] === before[about]
          ? null
          : new ListChange<AnyView>(before[about] ?? [], views[about]),
      );
    this.before = views;
    return this.byRule.flatMap((kept) => kept.of(views, changes.get(kept.about) ?? null));
  }
}

/** What was found in one view. */
interface InView {
  /** Of the view among all that the rule is about. */
  readonly place: number;
  readonly findings: readonly Finding[];
}

class KeptFindings {
  private readonly rule: Rule;
  /** For each view in which something was found, in their order: in most of them nothing was. */
  private found: readonly InView[] = [];
  private all: readonly Finding[] = [];

  constructor(rule: Rule) {
    this.rule = rule;
  }

  get about(): keyof Views {
    return this.rule.about;
  }

  /** `change`: what became of the views that it is about; null: nothing. */
  of(views: AllViews, change: ListChange<AnyView> | null): readonly Finding[] {
    if (!change) return this.all;
    const mine: readonly AnyView[] = views[this.rule.about];
    const found: InView[] = [];
    for (const { place: was, findings } of this.found) {
      const place = change.placeOf(was);
      if (place >= 0) found.push({ place, findings });
    }
    for (const place of change.added) {
      const findings = this.in(mine[place] as AnyView);
      if (findings.length > 0) found.push({ place, findings });
    }
    this.found = found.sort((a, b) => a.place - b.place);
    this.all = flat(this.found.map(({ findings }) => findings));
    return this.all;
  }

  private in(view: AnyView): readonly Finding[] {
    const { id, severity } = this.rule;
    // `about` and `find` of one rule belong together; the compiler can't follow that through a union.
    const find = this.rule.find as (view: AnyView) => readonly Found[];
    return find(view).map(({ corrections = [], ...one }) => ({
      rule: id,
      severity,
      ...one,
      ...(corrections.length > 0 ? { corrections } : {}),
    }));
  }
}
