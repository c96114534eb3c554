import { type Box, keptLast, type Point } from "../../base/index.ts";
import type { Id, Job, LineAnswer, PinRef } from "../../job/index.ts";
import { drawnOf } from "../changes/index.ts";
import { sceneOf } from "../diagram/scene.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import { type DoubtfulPlace, placesLookedAt } from "./doubtful-places.ts";
import { answerLines, leaveOutLine, takeBackAnswer } from "./line-answers.ts";
import { type NetDifference, netDifference } from "./net-difference.ts";
import { drawNets, type NetsDrawn } from "./net-drawing.ts";
import { isLacking } from "./net-edit.ts";
import type { PageDesk } from "./page-desk.ts";
import { pictureFileOf } from "./picture-file.ts";
import { createPointedLine } from "./pointed-line.ts";
import { ownPlaceOf } from "./stretch-place.ts";
import { isSameBasis } from "./trace-basis.ts";
import {
  type Followed,
  followedIn,
  NOT_TRACED,
  netLookedAt,
  type TracedSheet,
  type TraceState,
  withAnswer,
} from "./trace-state.ts";
import { createTracedLines, type TraceHelp } from "./traced-lines.ts";
import type { WholeNet } from "./whole-net.ts";

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
  /** Leaves a proposed net as it is; it is listed no more. */
  leave(id: string): void;
  /** Proposes again what was left. */
  takeUp(id: string): void;
  /** What the lines and the drawing have different; null before lines were followed. The same object while it is the same. */
  difference(): NetDifference | null;
  /** The doubtful places of what is looked at, with its open ends. The same object while they are the same. */
  places(): readonly DoubtfulPlace[];
  ask(place: DoubtfulPlace | null): void;
  /** Puts away, for this picture, that it is rough. */
  hearRough(): void;
  /** Puts away, until more is drawn, that splices were given names. */
  hearLaid(): void;
  answer(at: Point, joined: boolean): void;
  /** Says that the stretch of line there is none: a stain, a scratch. */
  leaveOut(at: Point): void;
  takeBack(at: Point): void;
  /** All that was said of lines of the sheet at hand, as it was said. The same object while it is the same. */
  answers(): readonly LineAnswer[];
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

const desks = new WeakMap<Session, TraceDesk>();

/** Null where the session was given no way to work on pictures. */
export const traceDeskOf = (session: Session): TraceDesk | null => desks.get(session) ?? null;

/** Has lines of this session's pictures followed. To be called before anything is shown. */
export function keepFollowing(session: Session, pages: PageDesk, help: TraceHelp): TraceDesk {
  const desk = createTraceDesk(session, pages, help);
  desks.set(session, desk);
  return desk;
}

/** How far from a pin its line may end, and from a line what was said of it, in line widths. */
const AROUND = 6;

/** How far from other lines a stretch is said to be none, in line widths: nothing else is near enough to be meant. */
const CLEAR = 4;

const NO_PLACES: readonly DoubtfulPlace[] = [];
const NO_ANSWERS: readonly LineAnswer[] = [];

export function createTraceDesk(session: Session, pages: PageDesk, help: TraceHelp): TraceDesk {
  const store = createStore<TraceState>(NOT_TRACED);
  const show = (change: Partial<TraceState>) => store.set((state) => ({ ...state, ...change }));
  const drawn = (): Job => drawnOf(session.get());
  const lines = createTracedLines(session, pages, help, store, () => pointed.findAgain());
  const pointed = createPointedLine(pages, help.wait, store, lines.fresh);
  const answersNow = () => lines.basisNow()?.answers ?? NO_ANSWERS;

  /** With the tool taken up while a pin or a part is chosen, that is what is followed. */
  const followChosen = async () => {
    const { selection, sheet, job } = session.get();
    const traced = await lines.fresh();
    const [chosen] = selection;
    const ref = job.links.find(({ cavity }) => cavity === chosen)?.pin ?? chosen;
    if (!traced || sheet === null || ref === undefined) return;
    const scene = sceneOf(drawn().diagram, sheet);
    const spot = scene.pins.get(ref) ?? scene.partById.get(ref)?.pins[0];
    if (spot) await pointed.follow(spot.at, AROUND * traced.lineWidth, spot.ref);
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
      lines.made.set(new Set());
      store.set(() => NOT_TRACED);
    } else if (isPutDown) show({ followed: null, hovered: null, place: null });
    const { traced, isOld } = store.get();
    const basis = traced && lines.basisNow();
    if (basis && isOld === isSameBasis(traced.basis, basis)) show({ isOld: !isOld });
    if (isTakenUp) void followChosen();
    else if (store.get().isOld) void lines.renew();
  };
  session.subscribe(heed);
  help.words.subscribe(heed);

  const differenceOf = keptLast((traced: TracedSheet, job: Job) =>
    netDifference(job, traced.basis.sheet, traced.nets, traced.questions),
  );
  const lacksOf = keptLast((net: WholeNet, job: Job, sheet: Id, words: readonly Box[]) =>
    isLacking(job, sheet, net, words),
  );
  const placesOf = keptLast(
    (
      followed: Followed | null,
      listed: TracedSheet | null,
      shown: string | null,
      answers: readonly LineAnswer[],
      words: readonly Box[],
      reach: number,
    ) => placesLookedAt({ followed, listed, shown }, answers, words, reach),
  );

  return {
    ...store,
    holds: lines.holds,
    follow: (at, reach, pin = null) => pointed.follow(at, reach, pin),
    hover: pointed.hover,
    forget: () => show({ followed: null, place: null }),
    traceAll: async () => {
      if (await lines.fresh()) show({ isListOpen: true });
    },
    closeList: () => show({ isListOpen: false, shown: null, place: null }),
    look: (id) => show({ shown: id }),
    leave: (id) => show({ left: new Set([...store.get().left, id]) }),
    takeUp: (id) => show({ left: new Set([...store.get().left].filter((one) => one !== id)) }),
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
    answers: answersNow,
    ask: (place) => show({ place }),
    hearRough: () => show({ isRoughHeard: true }),
    hearLaid: () => show({ laid: [] }),
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
      const looked = netLookedAt(store.get());
      const own = looked && ownPlaceOf(looked, at, traced.nets, CLEAR * traced.lineWidth);
      leaveOutLine(session, sheet, own ?? at);
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
      const { sheet } = session.get();
      if (sheet === null || !lines.holds()) return null;
      const before = lines.made.get();
      const drawn = drawNets(session, sheet, nets, help.words.get(), lines.made, label);
      const fresh = [...lines.made.get()].filter((id) => !before.has(id));
      if (drawn && fresh.length > 0) show({ laid: [...store.get().laid, ...fresh] });
      return drawn;
    },
    crop: (box) => pages.peek((port) => port.crop(box)),
  };
}
