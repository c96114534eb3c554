import {
  type CavityRef,
  cavityRef,
  type Id,
  type Job,
  ownerOf,
  type PinRef,
} from "../../job/index.ts";
import type { PlugView } from "../rule.ts";
import { keepList, Last, Views } from "./keep.ts";
import type { Now } from "./now.ts";

interface Tied {
  /** Pins that are tied to a cavity with nothing in it. */
  readonly closed: readonly PinRef[];
  /** As it is where none of them is bare. */
  readonly view: PlugView;
}

/** Looks at plugs and links, and at the drawing where a pin is tied to a cavity with nothing in it. */
export class PlugViews {
  private readonly tied = new Last<readonly Tied[]>();
  private readonly last = new Last<readonly PlugView[]>();
  private readonly views = new Views<Id, PlugView>();

  of({ job: { plugs, links }, network }: Now): readonly PlugView[] {
    const tied = this.tied.of([plugs, links], () => tiesOf(plugs, links));
    const isDrawingAsked = tied.some(({ closed }) => closed.length > 0);
    return this.last.of([tied, isDrawingAsked && network.revision], (before) => {
      const isBare = (ref: PinRef) => {
        const pin = network.pin(ref);
        return pin !== undefined && network.wiresAt(pin).length === 0;
      };
      const views = tied.map(({ closed, view }): [Id, PlugView] => {
        const bare = closed.filter(isBare);
        return [view.plug.id, bare.length === 0 ? view : { ...view, bare }];
      });
      return keepList(before, this.views.of(views));
    });
  }
}

function tiesOf(plugs: Job["plugs"], links: Job["links"]): readonly Tied[] {
  const pinAt = new Map<CavityRef, PinRef>(links.map(({ cavity, pin }) => [cavity, pin]));
  const inUse = new Set(links.map(({ cavity }) => ownerOf(cavity)));
  return plugs.map((plug) => {
    const pins = plug.cavities.map(({ mark }) => pinAt.get(cavityRef(plug.id, mark)) ?? null);
    const closed = plug.cavities.flatMap(({ empty, blocked }, index) =>
      empty || blocked ? (pins[index] ?? []) : [],
    );
    return { closed, view: { plug, pins, inUse: inUse.has(plug.id), bare: [] } };
  });
}
