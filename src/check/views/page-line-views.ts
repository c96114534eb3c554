import { addTo } from "../../base/index.ts";
import type { LinkedNetwork } from "../../circuit/index.ts";
import type { PageLineView } from "../rule.ts";
import { keepList, Last, Views } from "./keep.ts";
import type { Now } from "./now.ts";

/** Looks at page ends that are one line going on: two of one label, with one wire drawn to each. */
export class PageLineViews {
  /** Numbers of the pins of page ends with one label, two by two. */
  private readonly pairs = new Last<readonly (readonly [string, number, number])[]>();
  private readonly last = new Last<readonly PageLineView[]>();
  private readonly views = new Views<string, PageLineView>();

  of({ circuit: { wires }, network }: Now): readonly PageLineView[] {
    const { roster } = network;
    const pairs = this.pairs.of([roster], () => pairsOf(roster));
    return this.last.of([pairs, wires, network.revision], (before) => {
      const views = pairs.flatMap(([page, a, b]): [string, PageLineView][] => {
        const [here, ...moreHere] = network.wiresAt(a);
        const [there, ...moreThere] = network.wiresAt(b);
        // Where more wires come together, the page end stands for a joint.
        if (!here || !there || moreHere.length > 0 || moreThere.length > 0) return [];
        if (!here.colour || !there.colour || here === there) return [];
        return [[page, { ends: [network.ref(a), network.ref(b)], wires: [here, there] }]];
      });
      return keepList(before, this.views.of(views));
    });
  }
}

function pairsOf({ members }: LinkedNetwork["roster"]): readonly [string, number, number][] {
  const ends = new Map<string, number[]>();
  for (const { page, firstPin } of members) if (page) addTo(ends, page, firstPin);
  return [...ends].flatMap(([page, [a, b, ...more]]): [string, number, number][] =>
    // A label that many ends share names a rail that branches, not one line.
    a === undefined || b === undefined || more.length > 0 ? [] : [[page, a, b]],
  );
}
