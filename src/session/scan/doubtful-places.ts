import { type Box, distance, type Point } from "../../base/index.ts";
import type { LineAnswer } from "../../job/index.ts";
import type { LineQuestion, NetRun } from "../../scan/index.ts";
import { lengthOf, nearestOnLine } from "../diagram/polyline.ts";
import { degreesOf, isWordStub, type WholeNet } from "./whole-net.ts";

/** A place where the picture can't tell, asked still or answered by the user, or where a line may be none. */
export interface DoubtfulPlace {
  readonly at: Point;
  /** Null once it is answered, and where nothing is asked. */
  readonly question: LineQuestion | null;
  /** What the user said of whether lines are joined; null while that is asked, and where it is not. */
  readonly joined: boolean | null;
  /**
   * Of a stretch of line that may be a stain or a scratch: it ends there and nothing is placed, it was
   * pointed at there, or the user left it out. Null elsewhere.
   */
  readonly stretch: "ends" | "here" | "left-out" | null;
}

export const placeAsked = (question: LineQuestion): DoubtfulPlace => ({
  at: question.at,
  question,
  joined: null,
  stretch: null,
});

export const placeAnswered = ({ at, joined, stray }: LineAnswer): DoubtfulPlace => ({
  at,
  question: null,
  joined: stray ? null : joined,
  stretch: stray ? "left-out" : null,
});

const placeOnLine = (at: Point, stretch: "ends" | "here"): DoubtfulPlace => ({
  at,
  question: null,
  joined: null,
  stretch,
});

/** The places where a net's lines end and nothing is placed; not those that end in a word. */
export function openEndsOf(net: WholeNet, words: readonly Box[]): readonly DoubtfulPlace[] {
  const degrees = degreesOf(net);
  return net.nodes.flatMap(({ at, terminals }, node) => {
    if (degrees[node] !== 1 || terminals.length > 0) return [];
    const run = net.runs.find(({ from, to }) => from === node || to === node);
    return run && isWordStub(at, lengthOf(run.points), words) ? [] : [placeOnLine(at, "ends")];
  });
}

/** The stretch of a net, from joint or end to the next, that passes nearest to a place. */
export function stretchAt({ runs }: WholeNet, at: Point): NetRun | null {
  const away = ({ points }: NetRun) => nearestOnLine(points, at)?.distance ?? Infinity;
  return [...runs].sort((a, b) => away(a) - away(b))[0] ?? null;
}

/** The place on a net's line that is nearest to the one pointed at. */
export function placePointedAt(net: WholeNet, at: Point): DoubtfulPlace | null {
  const spot = nearestOnLine(stretchAt(net, at)?.points ?? [], at);
  return spot && placeOnLine(spot.at, "here");
}

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

/** What is looked at: a net that was pointed at, and, with the list of all lines open, one of that. */
export interface LookedAt {
  readonly followed: {
    readonly net: WholeNet | null;
    readonly questions: readonly LineQuestion[];
  } | null;
  /** Null while the list is closed. */
  readonly listed: {
    readonly nets: readonly WholeNet[];
    readonly questions: readonly LineQuestion[];
  } | null;
  /** Id of the listed net that is looked at. */
  readonly shown: string | null;
}

/** The doubtful places of what is looked at, with its open ends. `reach`: pixels up to which an answer is a line's. */
export function placesLookedAt(
  { followed, listed, shown }: LookedAt,
  answers: readonly LineAnswer[],
  words: readonly Box[],
  reach: number,
): readonly DoubtfulPlace[] {
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
}
