import { keptLast, type Point } from "../../base/index.ts";
import type { PinRef } from "../../job/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import type { Store } from "../store.ts";
import { isOnePlace } from "./doubtful-places.ts";
import { netGrid } from "./net-grid.ts";
import type { PageDesk } from "./page-desk.ts";
import { type Followed, questionsOf, type TraceState } from "./trace-state.ts";
import type { TracedLines, TraceHelp } from "./traced-lines.ts";
import { asOne } from "./whole-net.ts";

/** What lights up under the pointer, and where it is tapped. */
export interface PointedLine {
  /** Lights up what the pointer is over; pixels of the sheet. */
  hover(at: Point | null, reach: number): void;
  /** Lights up the whole net of a pin, or of a line with pins or without. */
  follow(at: Point, reach: number, pin: PinRef | null): Promise<void>;
  /** Looks up again what is followed: it is another object now, or longer, or two. */
  findAgain(): Promise<void>;
}

/** Milliseconds for which the pointer stays where it is meant to be. */
const HOVER = 120;

export function createPointedLine(
  pages: PageDesk,
  wait: TraceHelp["wait"],
  store: Store<TraceState>,
  fresh: TracedLines["fresh"],
): PointedLine {
  const show = (change: Partial<TraceState>) => store.set((state) => ({ ...state, ...change }));
  const gridOf = keptLast(netGrid);
  let hovers = 0;

  /** Shows a net that is followed, then the doubtful places that lead on to where no pin is, too. */
  const showFollowed = async (followed: Followed) => {
    show({ followed });
    const { at, reach, net, questions } = followed;
    if (!net || net.terminals.length === 0) return;
    const whole = await pages.peek((port) => port.netAt(at, reach));
    if (!whole || store.get().followed !== followed || !net.of.includes(whole.net.id)) return;
    const isKnown = ({ at: place }: LineQuestion) =>
      questions.some((one) => isOnePlace(one.at, place));
    const more = whole.questions.filter((one) => !isKnown(one));
    if (more.length > 0) show({ followed: { ...followed, questions: [...questions, ...more] } });
  };

  /** The net of a pin, or of the line nearest to a place, that comes to a pin. */
  const knownAt = (at: Point, reach: number, pin: PinRef | null): FoundHere | null => {
    const { traced } = store.get();
    if (!traced) return null;
    const ofPin = pin !== null ? traced.nets.find((net) => net.terminals.includes(pin)) : null;
    const net = ofPin ?? gridOf(traced.nets).at(at, reach);
    return net && { net, questions: questionsOf(net, traced.questions), isSought: false };
  };

  const netAt = async (at: Point, reach: number, pin: PinRef | null): Promise<FoundHere> => {
    const known = knownAt(at, reach, pin);
    if (known) return known;
    const found = await pages.peek((port) => port.netAt(at, reach));
    const net = found && asOne([found.net]);
    return { net, questions: found?.questions ?? [], isSought: false };
  };

  /** Lights up a line that no pin is on, once the pointer rests on it. */
  const hoverBare = async (hover: number, at: Point, reach: number) => {
    await wait(HOVER);
    if (hover !== hovers) return;
    const { net } = await netAt(at, reach, null);
    if (net && hover === hovers) show({ hovered: net });
  };

  return {
    hover: (at, reach) => {
      const { traced, hovered } = store.get();
      const hover = ++hovers;
      const net = at && traced ? gridOf(traced.nets).at(at, reach) : null;
      if (net !== hovered) show({ hovered: net });
      if (at && traced && !net) void hoverBare(hover, at, reach);
    },
    follow: async (at, reach, pin) => {
      if (!(await fresh())) return;
      const sought = { at, reach, pin, net: null, questions: [], isSought: true };
      show({ place: null, followed: sought });
      const found = await netAt(at, reach, pin);
      if (store.get().followed === sought) void showFollowed({ ...sought, ...found });
    },
    findAgain: async () => {
      const { followed } = store.get();
      if (!followed) return;
      const found = await netAt(followed.at, followed.reach, followed.pin);
      if (store.get().followed === followed) await showFollowed({ ...followed, ...found });
    },
  };
}

type FoundHere = Pick<Followed, "net" | "questions" | "isSought">;
