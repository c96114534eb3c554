/** Measuring without a verdict: a benchmark reports, it never fails for being slow. */

/** One line of a benchmark's table. */
export interface Row {
  readonly what: string;
  /** Milliseconds: the middle one of several runs. */
  readonly median: number;
  /** What it is held against, measured in the same process; absent for the reference itself. */
  readonly against?: string;
  readonly ratio?: number;
  /** Anything a reader should know beside it: a spread, a memory use, a count. */
  readonly note?: string;
}

/** A table of its own, for what has more sides than one reference. */
export interface Grid {
  readonly columns: readonly string[];
  readonly lines: readonly (readonly string[])[];
}

export interface Bench {
  readonly title: string;
  /** What is measured and what the reference is, for the page of results. */
  readonly about: string;
  run(): Promise<readonly Row[] | Grid | readonly Grid[]>;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}

/** The value that nine of ten stay below. */
export const ninetieth = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.ceil(values.length * 0.9) - 1] ?? Number.NaN;

/**
 * Milliseconds of each of `runs` calls, after `warmUp` calls that do not count. `prepare` makes
 * what a call works on and is not timed: give every call its own, where results are remembered.
 */
export function times<T>(
  work: (input: T) => unknown,
  prepare: () => T,
  { runs = 15, warmUp = 3 } = {},
): number[] {
  const taken: number[] = [];
  for (let n = -warmUp; n < runs; n++) {
    const input = prepare();
    const began = performance.now();
    held[0] = work(input);
    const time = performance.now() - began;
    if (n >= 0) taken.push(time);
  }
  return taken;
}

/** The last result, held where no compiler can know that nobody reads it. */
const held: unknown[] = [];

/** Megabytes more on the heap while the result of `work` is held. Needs `--expose-gc`. */
export function heapOf(work: () => unknown): number {
  const { gc } = globalThis;
  if (!gc) throw new Error("run with --expose-gc");
  held.length = 0;
  gc();
  const before = process.memoryUsage().heapUsed;
  held.push(work());
  gc();
  const after = process.memoryUsage().heapUsed;
  held.length = 0;
  return (after - before) / 1e6;
}
