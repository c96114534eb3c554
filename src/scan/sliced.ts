/**
 * Long work on pixels, cut in slices: each says how much is done, 0 to 1, and between two of them the
 * work may be left for good. A worker reports and listens there; everything long in this folder is so.
 */
export type Sliced<T> = Generator<number, T, void>;

/** Pixels a band: some milliseconds of work. */
const BAND = 1 << 19;

/** The result of sliced work that nobody waits for on a screen. */
export function finished<T>(work: Sliced<T>): T {
  for (;;) {
    const slice = work.next();
    if (slice.done) return slice.value;
  }
}

/** Work on rows `top` to `bottom` (outside) of a picture, band after band. */
export function* inBands(
  { width, height }: { readonly width: number; readonly height: number },
  work: (top: number, bottom: number) => void,
): Sliced<void> {
  const rows = Math.max(1, Math.floor(BAND / Math.max(1, width)));
  for (let top = 0; top < height; top += rows) {
    const bottom = Math.min(height, top + rows);
    work(top, bottom);
    yield bottom / height;
  }
}

/** Sliced work as a part of longer work: it begins when `from` of the whole is done, and ends at `to`. */
export function* asPart<T>(work: Sliced<T>, from: number, to: number): Sliced<T> {
  for (;;) {
    const slice = work.next();
    if (slice.done) return slice.value;
    yield from + (to - from) * slice.value;
  }
}
