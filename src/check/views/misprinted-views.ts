import { standingRole } from "../../roles/index.ts";
import type { MisprintedView, ModuleView } from "../rule.ts";
import { keepList, Last, Views } from "./keep.ts";

/** More of them are each looked at alone: every two of them would have to be held together. */
const MOST_TOGETHER = 40;

/** The modules with a word that is contradicted and that no adopted role stands in for. */
export class MisprintedViews {
  private readonly last = new Last<readonly MisprintedView[]>();
  private readonly views = new Views<ModuleView, MisprintedView>();
  private readonly isWrong = new WeakMap<ModuleView, boolean>();

  of(modules: readonly ModuleView[]): readonly MisprintedView[] {
    return this.last.of([modules], (before) => {
      const wrong = modules.filter((view) => this.hasWrongWord(view));
      const all = wrong.length > MOST_TOGETHER ? [] : wrong;
      return keepList(before, this.views.of(wrong.map((module) => [module, { module, all }])));
    });
  }

  private hasWrongWord(view: ModuleView): boolean {
    let wrong = this.isWrong.get(view);
    if (wrong === undefined) {
      wrong = view.roles.some(
        (role) => role.verdict === "contradicted" && standingRole(role) === null,
      );
      this.isWrong.set(view, wrong);
    }
    return wrong;
  }
}
