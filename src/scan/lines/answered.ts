import { boxAt, distance, type Point, type SpatialGrid, spatialGrid } from "../../base/index.ts";
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

/** Pixels that a cell is wide by which places are looked up. */
const CELL = 64;

/** Places by where an answer may be that is meant for them. */
class NearPlaces {
  private readonly places: readonly Answerable[];
  private readonly grid: SpatialGrid;

  constructor(places: readonly Answerable[]) {
    this.places = places;
    this.grid = spatialGrid(
      places.map(({ at, reach }) => boxAt(at, reach)),
      CELL,
    );
  }

  nearest(place: Point): number | null {
    let best: { number: number; far: number; isDoubtful: boolean } | null = null;
    for (const number of this.grid.near(boxAt(place, 0))) {
      const { at, reach, isDoubtful } = this.places[number] as Answerable;
      const far = distance(at, place);
      if (far > reach || (best?.isDoubtful && !isDoubtful)) continue;
      const isNearer =
        best === null || far < best.far || (far === best.far && number < best.number);
      if (isNearer || (isDoubtful && !best?.isDoubtful)) best = { number, far, isDoubtful };
    }
    return best?.number ?? null;
  }
}
