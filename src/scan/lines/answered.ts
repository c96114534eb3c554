import { addTo, type Point } from "../../base/index.ts";
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
  if (answers.length === 0) return { said, others };
  const near = new NearPlaces(places);
  for (const answer of answers) {
    const place = near.nearest(answer.at);
    if (place === null) others.push(answer);
    else said.set(place, answer.joined);
  }
  return { said, others };
}

/** Pixels that a square of the page is wide, and how many of them a place reaches over at most. */
const SIDE = 64;
const MOST_SQUARES = 64;

/** Places by where an answer may be that is meant for them. */
class NearPlaces {
  private readonly places: readonly Answerable[];
  private readonly squares = new Map<string, number[]>();
  /** Those that reach far. */
  private readonly wide: number[] = [];

  constructor(places: readonly Answerable[]) {
    this.places = places;
    places.forEach(({ at: [x, y], reach }, number) => {
      const [left, right] = [Math.floor((x - reach) / SIDE), Math.floor((x + reach) / SIDE)];
      const [top, bottom] = [Math.floor((y - reach) / SIDE), Math.floor((y + reach) / SIDE)];
      if ((right - left + 1) * (bottom - top + 1) > MOST_SQUARES) {
        this.wide.push(number);
        return;
      }
      for (let row = top; row <= bottom; row++)
        for (let column = left; column <= right; column++)
          addTo(this.squares, `${column} ${row}`, number);
    });
  }

  nearest([x, y]: Point): number | null {
    let best: { number: number; far: number; isDoubtful: boolean } | null = null;
    const here = this.squares.get(`${Math.floor(x / SIDE)} ${Math.floor(y / SIDE)}`) ?? [];
    for (const number of [...this.wide, ...here]) {
      const { at, reach, isDoubtful } = this.places[number] as Answerable;
      const far = Math.hypot(at[0] - x, at[1] - y);
      if (far > reach || (best?.isDoubtful && !isDoubtful)) continue;
      const isNearer =
        best === null || far < best.far || (far === best.far && number < best.number);
      if (isNearer || (isDoubtful && !best?.isDoubtful)) best = { number, far, isDoubtful };
    }
    return best?.number ?? null;
  }
}
