import { distance, type Point } from "../../base/index.ts";
import type { LineAnswer } from "../../job/index.ts";
import type { LineQuestion } from "../../scan/index.ts";
import { nearestOnLine } from "../diagram/polyline.ts";
import type { WholeNet } from "./whole-net.ts";

/** A place where the picture can't tell: asked still, or answered by the user. */
export interface DoubtfulPlace {
  readonly at: Point;
  /** Null once it is answered. */
  readonly question: LineQuestion | null;
  /** What the user said; null while it is asked. */
  readonly joined: boolean | null;
}

export const placeAsked = (question: LineQuestion): DoubtfulPlace => ({
  at: question.at,
  question,
  joined: null,
});

export const placeAnswered = ({ at, joined }: LineAnswer): DoubtfulPlace => ({
  at,
  question: null,
  joined,
});

/** Answers and questions nearer to one another than this are of one place, pixels. */
const ONE_PLACE = 2;

export const isOnePlace = (a: Point, b: Point): boolean => distance(a, b) <= ONE_PLACE;

/** The answers that were given along the lines of a net, up to `reach` pixels off. */
export const answersAlong = (
  { runs }: WholeNet,
  answers: readonly LineAnswer[],
  reach: number,
): readonly LineAnswer[] =>
  answers.filter(({ at }) =>
    runs.some(({ points }) => (nearestOnLine(points, at)?.distance ?? Infinity) <= reach),
  );
