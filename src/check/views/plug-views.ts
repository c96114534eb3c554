import { type CavityRef, cavityRef, type Id, ownerOf, type PinRef } from "../../job/index.ts";
import type { PlugView } from "../rule.ts";
import { keepList, Last, Views } from "./keep.ts";
import type { Now } from "./now.ts";

/** Looks at plugs and links alone. */
export class PlugViews {
  private readonly last = new Last<readonly PlugView[]>();
  private readonly views = new Views<Id, PlugView>();

  of({ job: { plugs, links } }: Now): readonly PlugView[] {
    return this.last.of([plugs, links], (before) => {
      const pinAt = new Map<CavityRef, PinRef>(links.map(({ cavity, pin }) => [cavity, pin]));
      const inUse = new Set(links.map(({ cavity }) => ownerOf(cavity)));
      const views = plugs.map((plug): [Id, PlugView] => {
        const pins = plug.cavities.map(({ mark }) => pinAt.get(cavityRef(plug.id, mark)) ?? null);
        return [plug.id, { plug, pins, inUse: inUse.has(plug.id) }];
      });
      return keepList(before, this.views.of(views));
    });
  }
}
