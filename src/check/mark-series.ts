import { CONFUSABLE_LETTERS, marksOf } from "../plug/index.ts";

/** Two-letter marks up to about this many are known: no plug has more. */
const MOST_LETTERS = 200;

const LETTERS = [[], CONFUSABLE_LETTERS].map((leaveOut) =>
  marksOf({ style: "letters", leaveOut }, MOST_LETTERS),
);

/** From the place itself to two neighbours: one on either side, or the two nearest at an end. */
const NEIGHBOURS = [
  [-1, 1],
  [1, 2],
  [-1, -2],
] as const;

/**
 * The mark that a place of a plug should have by its neighbours in the list: 4 between 3 and 5, J
 * between H and K where I is left out. Null where they do not run on, where two series differ about
 * it, or where that mark is taken already.
 */
export function markBySeries(marks: readonly string[], place: number): string | null {
  const steps = NEIGHBOURS.find((both) => both.every((step) => marks[place + step] !== undefined));
  if (!steps) return null;
  const neighbours = steps.map((step) => ({ step, mark: marks[place + step] ?? "" }));
  const found = new Set([
    ...numberFrom(neighbours),
    ...LETTERS.flatMap((series) => letterFrom(series, neighbours)),
  ]);
  const [mark, another] = found;
  return mark === undefined || another !== undefined || marks.includes(mark) ? null : mark;
}

interface Neighbour {
  readonly step: number;
  readonly mark: string;
}

function numberFrom(neighbours: readonly Neighbour[]): readonly string[] {
  if (!neighbours.every(({ mark }) => /^(0|[1-9]\d{0,5})$/.test(mark))) return [];
  const [one, other] = neighbours.map(({ step, mark }) => Number(mark) - step);
  return one === undefined || one !== other || one < 0 ? [] : [String(one)];
}

function letterFrom(series: readonly string[], neighbours: readonly Neighbour[]) {
  if (!neighbours.every(({ mark }) => series.includes(mark))) return [];
  const [one, other] = neighbours.map(({ step, mark }) => series.indexOf(mark) - step);
  const mark = one !== undefined && one === other ? series[one] : undefined;
  return mark === undefined ? [] : [mark];
}
