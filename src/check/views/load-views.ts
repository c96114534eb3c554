import {
  askAgain,
  type Kept,
  type LinkedNetwork,
  type Member,
  stillHolds,
} from "../../circuit/index.ts";
import type { Part } from "../../job/index.ts";
import { type LoadReach, loadReach } from "../load-reach.ts";
import type { LoadView } from "../rule.ts";
import { keepFlat, keepInStep, Last } from "./keep.ts";
import type { Now } from "./now.ts";

interface Known {
  readonly member: Member;
  readonly part: Part;
  readonly reaches: readonly Kept<LoadReach | null>[];
  readonly views: readonly LoadView[];
}

/** Looks at everything that does work, and at the circuit as far as each can be fed from. */
export class LoadViews {
  private readonly last = new Last<readonly LoadView[]>();
  /** Parts with loads, in the order of the drawing. */
  private known: readonly Known[] = [];

  of({ circuit: { parts }, network }: Now): readonly LoadView[] {
    return this.last.of([parts, network.revision], (before) => {
      const { loaded } = network.roster;
      this.known = keepInStep(this.known, loaded, memberOf, (member, known) =>
        known && holds(network, known) ? known : take(network, member, known),
      );
      return keepFlat(before, this.known, viewsOf);
    });
  }
}

const memberOf = ({ member }: Known) => member;
const viewsOf = ({ views }: Known) => views;

function holds(network: LinkedNetwork, { member, part, reaches }: Known): boolean {
  if (member.part !== part) return false;
  for (const reach of reaches) if (!stillHolds(network, reach)) return false;
  return true;
}

function take(network: LinkedNetwork, member: Member, known: Known | undefined): Known {
  const { part } = member;
  const reaches = member.loads.map((place, index) =>
    askAgain(network, known?.reaches[index], (sight) => {
      const way = sight.element(member, place);
      return way ? loadReach(sight, way) : null;
    }),
  );
  const views = reaches.flatMap(({ value }) => (value ? [{ part, ...value }] : []));
  const isSame = (view: LoadView, index: number) => {
    const was = known?.views[index];
    return was?.part === part && was.canBeFed === view.canBeFed && was.hasReturn === view.hasReturn;
  };
  const kept = views.map((view, index) =>
    isSame(view, index) ? (known?.views[index] as LoadView) : view,
  );
  return { member, part, reaches, views: kept };
}
