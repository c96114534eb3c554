import type { Box } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import { drawnOf } from "../changes/index.ts";
import type { Session } from "../session.ts";
import type { Store } from "../store.ts";
import type { PageDesk } from "./page-desk.ts";
import { askOf, basisOf, holdsWith, isSameBasis, type TraceBasis } from "./trace-basis.ts";
import type { TracedSheet, TraceState } from "./trace-state.ts";
import { wholeNets } from "./whole-net.ts";

/** What following lines needs of others. */
export interface TraceHelp {
  wait(ms: number): Promise<void>;
  /** Boxes of the words that were found on the sheet at hand; the same object while they are the same. */
  readonly words: Pick<Store<readonly Box[]>, "get" | "subscribe">;
}

/** The lines of the sheet at hand, followed when they are asked for, and for how long they hold. */
export interface TracedLines {
  /** What lines would be followed with now; null where the sheet has no picture. */
  basisNow(): TraceBasis | null;
  /** The lines as they are now, followed anew where they are old; null when that was broken off. */
  fresh(): Promise<TracedSheet | null>;
  /** Has them followed anew once nothing has been edited for a while, if anybody looks. */
  renew(): Promise<void>;
  /** Whether what was followed still holds: nets can be made wires only then. */
  holds(): boolean;
  /** Parts that nets were given: they lie on the lines that were followed. */
  readonly made: { get(): ReadonlySet<Id>; set(ids: ReadonlySet<Id>): void };
}

/** Milliseconds without an edit after which lines are followed anew. */
const REST = 250;
/** How often that is begun again when something else came between. */
const TRIES = 20;

/** `onTraced`: whenever lines were followed, before whoever asked for them gets them. */
export function createTracedLines(
  session: Session,
  pages: PageDesk,
  help: TraceHelp,
  store: Store<TraceState>,
  onTraced: () => Promise<void>,
): TracedLines {
  let made: ReadonlySet<Id> = new Set();
  let underWay: {
    readonly basis: TraceBasis;
    readonly isQuiet: boolean;
    readonly answer: Promise<TracedSheet | null>;
  } | null = null;
  let edits = 0;

  const basisNow = (): TraceBasis | null => {
    const { sheet } = session.get();
    return sheet === null ? null : basisOf(drawnOf(session.get()), sheet, help.words.get());
  };

  /** Follows all lines; who asks for what is under way already waits for that. */
  const trace = async (isQuiet: boolean): Promise<TracedSheet | null> => {
    const basis = basisNow();
    if (!basis) return null;
    if (underWay && (isQuiet || !underWay.isQuiet) && isSameBasis(underWay.basis, basis))
      return underWay.answer;
    const own = { basis, isQuiet, answer: traceWith(basis, isQuiet) };
    underWay = own;
    return own.answer.finally(() => {
      if (underWay === own) underWay = null;
    });
  };

  const traceWith = async (basis: TraceBasis, isQuiet: boolean): Promise<TracedSheet | null> => {
    const madeThen = made;
    const work: Parameters<typeof pages.runQuietly<TracedSheet>>[0] = async (port, tell, page) => {
      const { nets, questions, isTooRough } = await port.trace(askOf(basis), tell);
      const { lineWidth } = page;
      return { basis, lineWidth, nets: wholeNets(nets), questions, isTooRough };
    };
    const traced = await (isQuiet ? pages.runQuietly(work) : pages.run("Following lines", work));
    if (!traced) return null;
    const now = basisNow();
    const isOld = !now || !isSameBasis(basis, now);
    // What was drawn meanwhile lies along lines that are another's now.
    if (madeThen !== made) made = new Set([...made].filter((id) => !madeThen.has(id)));
    else made = new Set();
    store.set((state) => ({ ...state, traced, isOld, hovered: null }));
    await onTraced();
    return traced;
  };

  return {
    basisNow,
    fresh: async () => {
      const { traced, isOld } = store.get();
      return traced && !isOld ? traced : trace(false);
    },
    renew: async () => {
      const edit = ++edits;
      const isWanted = () => {
        const { isOld, followed, isListOpen } = store.get();
        const { tool, scanDesk } = session.get();
        const isLookedAt = isListOpen || followed !== null || tool.name === "follow";
        return edit === edits && isOld && scanDesk && isLookedAt;
      };
      // Whoever waits for something else breaks it off.
      for (let left = TRIES; left > 0; left--) {
        await help.wait(REST);
        if (!isWanted() || (await trace(true))) return;
      }
    },
    holds: () => {
      const { traced } = store.get();
      const now = basisNow();
      return traced !== null && now !== null && holdsWith(traced.basis, now, made);
    },
    made: {
      get: () => made,
      set: (ids) => {
        made = ids;
      },
    },
  };
}
