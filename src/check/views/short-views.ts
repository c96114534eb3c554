import { askAgain, type Kept } from "../../circuit/index.ts";
import { type PinRef, pinRef } from "../../job/index.ts";
import type { ShortView } from "../rule.ts";
import { shortsFrom } from "../shorts.ts";
import { keepList, Last } from "./keep.ts";
import type { Now } from "./now.ts";

/** Looks at the batteries, and at the circuit as far as a way without a load leads from each. */
export class ShortViews {
  private readonly last = new Last<readonly ShortView[]>();
  private kept = new Map<PinRef, Kept<readonly ShortView[]>>();

  of({ network }: Now): readonly ShortView[] {
    return this.last.of([network.revision], (before) => {
      const next: typeof this.kept = new Map();
      const views = network.roster.batteries.flatMap(({ part }) => {
        const plus = pinRef(part.id, "+");
        const shorts = askAgain(network, this.kept.get(plus), (sight) => shortsFrom(sight, plus));
        next.set(plus, shorts);
        return shorts.value;
      });
      this.kept = next;
      return keepList(before, views);
    });
  }
}
