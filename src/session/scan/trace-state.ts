import type { Point } from "../../base/index.ts";
import type { Id, PinRef } from "../../job/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import { type DoubtfulPlace, isOnePlace } from "./doubtful-places.ts";
import type { TraceBasis } from "./trace-basis.ts";
import { asOne, type WholeNet } from "./whole-net.ts";

/** The lines of a sheet's picture as they were followed last. */
export interface TracedSheet {
  readonly basis: TraceBasis;
  /** Of the usual line, pixels. */
  readonly lineWidth: number;
  readonly nets: readonly WholeNet[];
  readonly questions: readonly LineQuestion[];
  /** As `Traced` has it. */
  readonly isTooRough: boolean;
}

/** A net that was pointed at. */
export interface Followed {
  /** Where it was pointed at: the net is found again by it when lines are followed anew. */
  readonly at: Point;
  readonly reach: number;
  /** The pin that was pointed at; null for a line. */
  readonly pin: PinRef | null;
  /** Null where no line is, and while one is looked for. */
  readonly net: WholeNet | null;
  readonly isSought: boolean;
  readonly questions: readonly LineQuestion[];
}

export interface TraceState {
  readonly traced: TracedSheet | null;
  /** Whether parts, answers or words are others than `traced` was made with. */
  readonly isOld: boolean;
  readonly followed: Followed | null;
  /** What the pointer is over. */
  readonly hovered: WholeNet | null;
  /** The doubtful place that is looked at closely. */
  readonly place: DoubtfulPlace | null;
  /** Whether all nets are listed. */
  readonly isListOpen: boolean;
  /** The net of that list, or the difference, that is looked at: by its id. */
  readonly shown: string | null;
  /** Ids of nets that the user leaves as they are. */
  readonly left: ReadonlySet<string>;
  /** Whether the user has put away that the picture is rough. */
  readonly isRoughHeard: boolean;
  /** Parts that came with lines of this picture, by the names that they were given; none once that was heard. */
  readonly laid: readonly Id[];
}

export const NOT_TRACED: TraceState = {
  traced: null,
  isOld: false,
  followed: null,
  hovered: null,
  place: null,
  isListOpen: false,
  shown: null,
  left: new Set(),
  isRoughHeard: false,
  laid: [],
};

/** The net whose open ends are shown: of the open list the one looked at, else the one pointed at. */
export const netLookedAt = ({
  followed,
  isListOpen,
  shown,
  traced,
}: Pick<TraceState, "followed" | "isListOpen" | "shown" | "traced">): WholeNet | null => {
  const listed = isListOpen ? traced?.nets.find(({ id }) => id === shown) : null;
  return listed ?? followed?.net ?? null;
};

export const questionsOf = (
  { of }: WholeNet,
  all: readonly LineQuestion[],
): readonly LineQuestion[] => all.filter(({ nets }) => nets.some((id) => of.includes(id)));

/**
 * What an answer makes of nets until lines are followed anew: those that it joins are one, and the
 * question is asked no more.
 */
export function withAnswer(traced: TracedSheet, at: Point, joined: boolean): TracedSheet {
  const answered = traced.questions.find((one) => isOnePlace(one.at, at));
  if (!answered) return traced;
  const questions = traced.questions.filter((one) => one !== answered);
  const together = traced.nets.filter(({ of }) => of.some((id) => answered.nets.includes(id)));
  const [first] = together;
  if (!joined || !first || together.length < 2) return { ...traced, questions };
  const nets = traced.nets.flatMap((net) =>
    net === first ? [asOne(together)] : together.includes(net) ? [] : [net],
  );
  return { ...traced, nets, questions };
}

/** The net that was followed, as it is among these. */
export function followedIn(
  { nets, questions }: TracedSheet,
  followed: Followed,
  answered: Point,
): Followed {
  const net = nets.find(({ of }) => followed.net?.of.some((id) => of.includes(id)));
  return {
    ...followed,
    net: net ?? followed.net,
    questions: net
      ? questionsOf(net, questions)
      : followed.questions.filter(({ at }) => !isOnePlace(at, answered)),
  };
}
