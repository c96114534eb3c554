import type { Point } from "../../base/index.ts";
import type { LineAnswer } from "./line-context.ts";

/** A place that an answer may decide. */
export interface Answerable {
  readonly at: Point;
  /** Pixels from it within which an answer is meant for it. */
  readonly reach: number;
  readonly isDoubtful: boolean;
}

export interface Answered {
  /** By number of the place: whether the lines there are one. */
  readonly said: ReadonlyMap<number, boolean>;
  /** Answers at places where there was nothing to ask. */
  readonly others: readonly LineAnswer[];
}

/** Each answer goes to the nearest doubtful place in reach, else to the nearest sure one; the last counts. */
export function answered(answers: readonly LineAnswer[], places: readonly Answerable[]): Answered {
  const said = new Map<number, boolean>();
  const others: LineAnswer[] = [];
  for (const answer of answers) {
    const place = nearestPlace(answer.at, places);
    if (place === null) others.push(answer);
    else said.set(place, answer.joined);
  }
  return { said, others };
}

function nearestPlace([x, y]: Point, places: readonly Answerable[]): number | null {
  let best: { number: number; far: number; isDoubtful: boolean } | null = null;
  for (let number = 0; number < places.length; number++) {
    const { at, reach, isDoubtful } = places[number] as Answerable;
    const far = Math.hypot(at[0] - x, at[1] - y);
    if (far > reach || (best?.isDoubtful && !isDoubtful)) continue;
    if (best === null || far < best.far || (isDoubtful && !best.isDoubtful))
      best = { number, far, isDoubtful };
  }
  return best?.number ?? null;
}
