/** Numbers in order, coordinates of pixels. */
type Coordinates = Float64Array | Float32Array;

/**
 * Where a track of `count` pixels turns: the numbers of its corners in order, both ends among them. No
 * pixel between two corners lies farther than `stray` from the straight line through them (D. Douglas and
 * T. Peucker, "Algorithms for the reduction of the number of points", 1973).
 */
export function trackCorners(
  xs: Coordinates,
  ys: Coordinates,
  count: number,
  stray: number,
): number[] {
  if (count < 2) return [0];
  const kept = [0, count - 1];
  const open: (readonly [first: number, last: number])[] = [[0, count - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [first, last] = span;
    const [x, y] = [xs[first] as number, ys[first] as number];
    const [dx, dy] = [(xs[last] as number) - x, (ys[last] as number) - y];
    const length = Math.hypot(dx, dy);
    // Ends that lie on one another have no line between them: how far from them counts then.
    let [at, most] = [-1, length < 1 ? stray : stray * length];
    for (let n = first + 1; n < last; n++) {
      const px = (xs[n] as number) - x;
      const py = (ys[n] as number) - y;
      const off = length < 1 ? Math.hypot(px, py) : Math.abs(px * dy - py * dx);
      if (off <= most) continue;
      at = n;
      most = off;
    }
    if (at < 0) continue;
    kept.push(at);
    open.push([first, at], [at, last]);
  }
  return kept.sort((a, b) => a - b);
}
