import type { Point } from "../../../base/index.ts";
import { cavityRef, type Plug } from "../../../job/index.ts";
import { nextMark } from "../../../plug/index.ts";
import {
  addCavity,
  confirmPlaces,
  deleteCavity,
  deletePlug,
  moveCavity,
  redrawOnPhoto,
  redrawPlug,
  rehousePlug,
  removePhoto,
  renameMark,
  type Session,
  setCavityState,
  unlink,
} from "../../../session/index.ts";
import { ARROW_STEPS } from "../../arrow-steps.ts";
import type { CavityFacts } from "./cavity-facts.ts";

/** What the user does to one plug: each call is one edit of the job, with the selection following. */
export interface PlugActs {
  readonly add: (at: Point) => void;
  readonly move: (facts: CavityFacts, at: Point) => void;
  readonly nudge: (facts: CavityFacts, key: string, fine: boolean) => boolean;
  readonly setState: (facts: CavityFacts, state: CavityFacts["state"]) => void;
  readonly rename: (facts: CavityFacts, mark: string) => void;
  readonly untie: (facts: CavityFacts) => void;
  readonly remove: (facts: CavityFacts) => void;
  readonly redraw: (drawn: Omit<Plug, "id">) => void;
  readonly redrawOnPhoto: (drawn: Omit<Plug, "id">) => void;
  readonly removePhoto: () => void;
  readonly confirmPlaces: () => void;
  readonly rehouse: () => void;
  readonly removePlug: () => void;
  /** Chooses the cavity, or puts the lead there that the reading being entered asks for. */
  readonly touch: (facts: CavityFacts) => void;
}

/** Steps of the arrow keys, millimetres. */
const NUDGE = 0.5;
const FINE_NUDGE = 0.1;

const hundredths = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

export function plugActs(session: Session, plug: Plug): PlugActs {
  const placeOf = (facts: CavityFacts) => ({ plug: plug.id, index: facts.index });
  const choose = (ref: string | null) => session.show({ selection: ref === null ? [] : [ref] });
  const move = (facts: CavityFacts, at: Point) =>
    session.edit(`Move cavity ${facts.ref}`, (draft) =>
      moveCavity(draft, placeOf(facts), hundredths(at)),
    );
  return {
    move,
    add: (at) => {
      const mark = nextMark(plug.cavities.map((cavity) => cavity.mark));
      const ref = cavityRef(plug.id, mark);
      session.edit(`Add cavity ${ref}`, (draft) => {
        addCavity(draft, plug.id, mark, hundredths(at));
      });
      choose(ref);
    },
    nudge: (facts, key, fine) => {
      const step = ARROW_STEPS[key];
      if (!step) return false;
      const length = fine ? FINE_NUDGE : NUDGE;
      // The key moves it as it is seen; seen from the other side, stored points run backwards.
      const along = session.get().side === plug.side ? length : -length;
      const [x, y] = facts.cavity.at;
      move(facts, [x + step[0] * along, y + step[1] * length]);
      return true;
    },
    setState: (facts, state) =>
      session.edit(
        state === "plain" ? `Mark ${facts.ref} as in use` : `Mark ${facts.ref} as ${state}`,
        (draft) => setCavityState(draft, placeOf(facts), state),
      ),
    rename: (facts, mark) => {
      session.edit(`Change mark ${facts.ref} to ${mark}`, (draft) =>
        renameMark(draft, placeOf(facts), mark),
      );
      choose(cavityRef(plug.id, mark));
    },
    untie: (facts) => session.edit(`Untie ${facts.ref}`, (draft) => unlink(draft, facts.ref)),
    remove: (facts) => {
      session.edit(`Delete cavity ${facts.ref}`, (draft) => deleteCavity(draft, placeOf(facts)));
      choose(null);
    },
    redraw: (drawn) => {
      session.edit(`Change the arrangement of ${plug.id}`, (draft) =>
        redrawPlug(draft, plug.id, drawn),
      );
      session.show({ side: drawn.side });
    },
    redrawOnPhoto: (drawn) => {
      session.edit(`Change ${plug.id} on its photo`, (draft) =>
        redrawOnPhoto(draft, plug.id, drawn),
      );
      session.show({ side: drawn.side });
    },
    removePhoto: () =>
      session.edit(`Take the photo of ${plug.id} away`, (draft) => removePhoto(draft, plug.id)),
    confirmPlaces: () =>
      session.edit(`Confirm the positions of ${plug.id}`, (draft) => confirmPlaces(draft, plug.id)),
    rehouse: () =>
      session.edit(`Draw the housing of ${plug.id}`, (draft) => rehousePlug(draft, plug.id)),
    removePlug: () => {
      session.edit(`Delete plug ${plug.id}`, (draft) => deletePlug(draft, plug.id));
      choose(null);
    },
    touch: (facts) => {
      const { draft } = session.get();
      if (!draft?.asks) {
        choose(facts.ref);
        return;
      }
      const filled = { ...draft, [draft.asks]: facts.ref };
      const asks = filled.red === null ? "red" : filled.black === null ? "black" : null;
      session.show({ draft: { ...filled, asks } });
    },
  };
}
