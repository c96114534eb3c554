import { type Box, distance, type Point } from "../../base/index.ts";
import type { Id, Job, LineAnswer, PinRef } from "../../job/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import { drawnOf } from "../changes/index.ts";
import { sceneOf } from "../diagram/scene.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import {
  answersAlong,
  type DoubtfulPlace,
  isOnePlace,
  openEndsOf,
  placeAnswered,
  placeAsked,
} from "./doubtful-places.ts";
import { answerLines, leaveOutLine, takeBackAnswer } from "./line-answers.ts";
import { type NetDifference, netDifference } from "./net-difference.ts";
import { isLacking, layNets } from "./net-edit.ts";
import { type NetGrid, netGrid } from "./net-grid.ts";
import type { PageDesk } from "./page-desk.ts";
import { pictureFileOf } from "./picture-file.ts";
import { askOf, basisOf, holdsWith, isSameBasis, type TraceBasis } from "./trace-basis.ts";
import {
  type Followed,
  followedIn,
  NOT_TRACED,
  questionsOf,
  type TracedSheet,
  type TraceState,
  withAnswer,
} from "./trace-state.ts";
import { asOne, type WholeNet, wholeNets } from "./whole-net.ts";

/** Follows lines of the picture of the sheet at hand, and keeps what came of it for as long as it holds. */
export interface TraceDesk extends Store<TraceState> {
  /** Lights up what the pointer is over; pixels of the sheet. */
  hover(at: Point | null, reach: number): void;
  /** Lights up the whole net of a pin, or of a line with pins or without. */
  follow(at: Point, reach: number, pin?: PinRef | null): Promise<void>;
  forget(): void;
  /** Follows every line and lists what the drawing lacks. */
  traceAll(): Promise<void>;
  closeList(): void;
  look(id: string | null): void;
  leave(id: string): void;
  /** What the lines and the drawing have different; null before lines were followed. The same object while it is the same. */
  difference(): NetDifference | null;
  /** The doubtful places of what is looked at, with its open ends. The same object while they are the same. */
  places(): readonly DoubtfulPlace[];
  ask(place: DoubtfulPlace | null): void;
  answer(at: Point, joined: boolean): void;
  /** Says that the stretch of line there is none: a stain, a scratch. */
  leaveOut(at: Point): void;
  takeBack(at: Point): void;
  /** Whether what was followed still holds: nets can be made wires only then. */
  holds(): boolean;
  /** Whether the drawing lacks anything of a net. */
  lacks(net: WholeNet): boolean;
  /**
   * Draws what the sheet lacks of these nets, as one edit. Returns what that took; null where what was followed no longer holds, or the edit was refused.
   */
  draw(nets: readonly WholeNet[], label: string): NetsDrawn | null;
  /** A piece of the picture for a close look. */
  crop(box: Box): Promise<ImageBitmap | null>;
}

/** How many of each were drawn; `ends`: untraced ends, where nothing is placed. */
export interface NetsDrawn {
  readonly wires: number;
  readonly splices: number;
  readonly ends: number;
}

/** What the desk needs of others. */
export interface TraceHelp {
  wait(ms: number): Promise<void>;
  /** Boxes of the words that were found on the sheet at hand; the same object while they are the same. */
  readonly words: Pick<Store<readonly Box[]>, "get" | "subscribe">;
}

const desks = new WeakMap<Session, TraceDesk>();

/** Null where the session was given no way to work on pictures. */
export const traceDeskOf = (session: Session): TraceDesk | null => desks.get(session) ?? null;

/** Has lines of this session's pictures followed. To be called before anything is shown. */
export function keepFollowing(session: Session, pages: PageDesk, help: TraceHelp): TraceDesk {
  const desk = createTraceDesk(session, pages, help);
  desks.set(session, desk);
  return desk;
}

/** Milliseconds without an edit after which lines are followed anew. */
const REST = 250;
/** How often that is begun again when something else came between. */
const TRIES = 20;
/** Milliseconds for which the pointer stays where it is meant to be. */
const HOVER = 120;
/** How far from a pin its line may end, and from a line what was said of it, in line widths. */
const AROUND = 6;

export function createTraceDesk(session: Session, pages: PageDesk, help: TraceHelp): TraceDesk {
  const store = createStore<TraceState>(NOT_TRACED);
  const show = (change: Partial<TraceState>) => store.set((state) => ({ ...state, ...change }));
  /** Parts that nets of `traced` were given: they lie on its lines. */
  let made: ReadonlySet<Id> = new Set();
  let underWay: {
    readonly basis: TraceBasis;
    readonly isQuiet: boolean;
    readonly answer: Promise<TracedSheet | null>;
  } | null = null;
  let edits = 0;
  let hovers = 0;

  const drawn = (): Job => drawnOf(session.get());
  const basisNow = (): TraceBasis | null => {
    const { sheet } = session.get();
    return sheet === null ? null : basisOf(drawn(), sheet, help.words.get());
  };
  const answersNow = (): readonly LineAnswer[] => basisNow()?.answers ?? [];
  const gridOf = kept((nets: readonly WholeNet[]): NetGrid => netGrid(nets));

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
      const { nets, questions } = await port.trace(askOf(basis), tell);
      return { basis, lineWidth: page.lineWidth, nets: wholeNets(nets), questions };
    };
    const traced = await (isQuiet ? pages.runQuietly(work) : pages.run("Following lines", work));
    if (!traced) return null;
    const now = basisNow();
    const isOld = !now || !isSameBasis(basis, now);
    // What was drawn meanwhile lies along lines that are another's now.
    if (madeThen !== made) made = new Set([...made].filter((id) => !madeThen.has(id)));
    else made = new Set();
    show({ traced, isOld, hovered: null });
    await findAgain();
    return traced;
  };

  /** What is followed is another object now, or longer, or two. */
  const findAgain = async () => {
    const { followed } = store.get();
    if (!followed) return;
    const found = await netAt(followed.at, followed.reach, followed.pin);
    if (store.get().followed === followed) await showFollowed({ ...followed, ...found });
  };

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

  const fresh = async (): Promise<TracedSheet | null> => {
    const { traced, isOld } = store.get();
    return traced && !isOld ? traced : trace(false);
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

  const follow = async (at: Point, reach: number, pin: PinRef | null = null) => {
    if (!(await fresh())) return;
    const sought = { at, reach, pin, net: null, questions: [], isSought: true };
    show({ place: null, followed: sought });
    const found = await netAt(at, reach, pin);
    if (store.get().followed === sought) void showFollowed({ ...sought, ...found });
  };

  /** With the tool taken up while a pin or a part is chosen, that is what is followed. */
  const takeUp = async () => {
    const { selection, sheet, job } = session.get();
    const traced = await fresh();
    const [chosen] = selection;
    const ref = job.links.find(({ cavity }) => cavity === chosen)?.pin ?? chosen;
    if (!traced || sheet === null || ref === undefined) return;
    const scene = sceneOf(drawn().diagram, sheet);
    const spot = scene.pins.get(ref) ?? scene.partById.get(ref)?.pins[0];
    if (spot) await follow(spot.at, AROUND * traced.lineWidth, spot.ref);
  };

  const standing = () => {
    const { key, tool, sheet } = session.get();
    const file = pictureFileOf(session.get());
    return { key, sheet, file, isFollowing: tool.name === "follow" };
  };
  let before = standing();
  const heed = () => {
    const now = standing();
    const isOther =
      now.key !== before.key || now.sheet !== before.sheet || now.file !== before.file;
    const isTakenUp = now.isFollowing && (isOther || !before.isFollowing);
    const isPutDown = before.isFollowing && !now.isFollowing;
    before = now;
    if (isOther) {
      made = new Set();
      store.set(() => NOT_TRACED);
    } else if (isPutDown) show({ followed: null, hovered: null, place: null });
    const { traced, isOld } = store.get();
    const basis = traced && basisNow();
    if (basis && isOld === isSameBasis(traced.basis, basis)) show({ isOld: !isOld });
    if (isTakenUp) void takeUp();
    else if (store.get().isOld) void again();
  };
  session.subscribe(heed);
  help.words.subscribe(heed);

  /** Follows lines anew once nothing has been edited for a while, if anybody looks. */
  const again = async () => {
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
  };

  /** Lights up a line that no pin is on, once the pointer rests on it. */
  const hoverBare = async (hover: number, at: Point, reach: number) => {
    await help.wait(HOVER);
    if (hover !== hovers) return;
    const { net } = await netAt(at, reach, null);
    if (net && hover === hovers) show({ hovered: net });
  };

  const holds = () => {
    const { traced } = store.get();
    const now = basisNow();
    return traced !== null && now !== null && holdsWith(traced.basis, now, made);
  };

  const differenceOf = kept((traced: TracedSheet, job: Job) =>
    netDifference(job, traced.basis.sheet, traced.nets, traced.questions),
  );
  const lacksOf = kept((net: WholeNet, job: Job, sheet: Id, words: readonly Box[]) =>
    isLacking(job, sheet, net, words),
  );
  const placesOf = kept(
    (
      followed: Followed | null,
      listed: TracedSheet | null,
      shown: string | null,
      answers: readonly LineAnswer[],
      words: readonly Box[],
      reach: number,
    ): readonly DoubtfulPlace[] => {
      const along = followed?.net ? answersAlong(followed.net, answers, reach) : [];
      const asked = listed?.questions ?? followed?.questions ?? [];
      const open = asked.filter(({ at }) => !answers.some((one) => isOnePlace(one.at, at)));
      const said = answers.filter((one) => listed || one.stray || along.includes(one));
      const chosen = listed?.nets.find(({ id }) => id === shown) ?? followed?.net;
      // Where it is asked, or was said, that lines are joined, that decides whether one ends there.
      const joints = [...open, ...said.filter(({ joined }) => joined)];
      const ends = (chosen ? openEndsOf(chosen, words) : []).filter(
        ({ at }) => !joints.some((one) => distance(one.at, at) <= reach),
      );
      return [...open.map(placeAsked), ...said.map(placeAnswered), ...ends];
    },
  );

  return {
    ...store,
    holds,
    follow,
    hover: (at, reach) => {
      const { traced, hovered } = store.get();
      const hover = ++hovers;
      const net = at && traced ? gridOf(traced.nets).at(at, reach) : null;
      if (net !== hovered) show({ hovered: net });
      if (at && traced && !net) void hoverBare(hover, at, reach);
    },
    forget: () => show({ followed: null, place: null }),
    traceAll: async () => {
      if (await fresh()) show({ isListOpen: true });
    },
    closeList: () => show({ isListOpen: false, shown: null, place: null }),
    look: (id) => show({ shown: id }),
    leave: (id) => show({ left: new Set([...store.get().left, id]) }),
    difference: () => {
      const { traced } = store.get();
      return traced && differenceOf(traced, drawn());
    },
    places: () => {
      const { followed, isListOpen, shown, traced } = store.get();
      if (!traced) return NO_PLACES;
      const listed = isListOpen ? traced : null;
      const around = AROUND * traced.lineWidth;
      return placesOf(followed, listed, shown, answersNow(), help.words.get(), around);
    },
    ask: (place) => show({ place }),
    answer: (at, joined) => {
      const { traced, followed } = store.get();
      const { sheet } = session.get();
      if (sheet === null || !traced) return;
      const next = withAnswer(traced, at, joined);
      const now = followed && followedIn(next, followed, at);
      show({ traced: next, place: null, followed: now });
      answerLines(session, sheet, at, joined);
    },
    leaveOut: (at) => {
      const { traced, followed } = store.get();
      const { sheet } = session.get();
      if (sheet === null || !traced) return;
      // The line that was pointed at is none: what is left of its net is found by a pin of it.
      const [pin] = followed?.net?.terminals ?? [];
      const isKept = followed?.pin != null || pin === undefined;
      show({ place: null, followed: followed && (isKept ? followed : { ...followed, pin }) });
      leaveOutLine(session, sheet, at);
    },
    takeBack: (at) => {
      const { sheet } = session.get();
      show({ place: null });
      if (sheet !== null) takeBackAnswer(session, sheet, at);
    },
    lacks: (net) => {
      const { sheet } = session.get();
      return sheet !== null && lacksOf(net, drawn(), sheet, help.words.get());
    },
    draw: (nets, label) => {
      const { sheet, job } = session.get();
      if (sheet === null || !holds()) return null;
      let laid: ReturnType<typeof layNets> = { wires: [], parts: [] };
      const madeThen = made;
      session.edit(label, (draft) => {
        laid = layNets(draft, sheet, nets, help.words.get());
        made = new Set([...madeThen, ...laid.parts]);
      });
      // What can't be drawn on the machine at hand was refused, with a word about it.
      const isRefused = laid.wires.length > 0 && session.get().job === job;
      if (isRefused) return null;
      const laidParts = new Set(laid.parts);
      const splices = drawnOf(session.get()).diagram.parts.filter(
        ({ id, kind }) => kind === "splice" && laidParts.has(id),
      ).length;
      return { wires: laid.wires.length, splices, ends: laid.parts.length - splices };
    },
    crop: (box) => pages.peek((port) => port.crop(box)),
  };
}

type FoundHere = Pick<Followed, "net" | "questions" | "isSought">;

const NO_PLACES: readonly DoubtfulPlace[] = [];

/** A function that gives the same object while it is asked the same as the last time. */
function kept<A extends readonly unknown[], T>(work: (...args: A) => T): (...args: A) => T {
  let last: { readonly args: A; readonly answer: T } | null = null;
  return (...args) => {
    if (!last?.args.every((one, n) => one === args[n])) last = { args, answer: work(...args) };
    return last.answer;
  };
}
