import { askAgain, type Kept } from "../../circuit/index.ts";
import { type PinRef, pinRef } from "../../job/index.ts";
import type { UnfusedView } from "../rule.ts";
import { fedUnfused } from "../unfused.ts";
import { keepList, Last, Views } from "./keep.ts";
import type { Now } from "./now.ts";

/** Looks at the batteries, and at the circuit as far as it lies before the first fuses. */
export class UnfusedViews {
  private readonly last = new Last<readonly UnfusedView[]>();
  private readonly views = new Views<PinRef, UnfusedView>();
  private kept = new Map<PinRef, Kept<readonly string[]>>();

  of({ network }: Now): readonly UnfusedView[] {
    return this.last.of([network.revision], (before) => {
      const next: typeof this.kept = new Map();
      const found = network.roster.batteries.flatMap(({ part }): [PinRef, UnfusedView][] => {
        const plus = pinRef(part.id, "+");
        const fed = askAgain(network, this.kept.get(plus), (sight) => fedUnfused(sight, plus));
        next.set(plus, fed);
        return fed.value.length === 0 ? [] : [[plus, { plus, fed: fed.value }]];
      });
      this.kept = next;
      return keepList(before, this.views.of(found));
    });
  }
}
