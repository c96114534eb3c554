/** Places off the curve by more than this many pixels are no part of it, however scattered the rest. */
const NEAR = 1.5;

/**
 * Which of the places of a side lie on one flat curve: a straight edge, or one that a lens bows. Of
 * parabolas through three places that with the least median distance is taken, which holds with up
 * to half of the places astray (P. Rousseeuw, "Least median of squares regression", JASA 79, 1984).
 * `along` and `off` in pixels.
 */
export function curveThrough(
  along: readonly number[],
  off: readonly number[],
  length: number,
  reach: number,
): readonly boolean[] {
  const count = along.length;
  if (count < 6) return along.map(() => false);
  const at = along.map((place) => (2 * place) / length - 1);
  let best: Curve = [0, 0, 0];
  let least = Number.POSITIVE_INFINITY;
  const distances = new Float64Array(count);
  for (const [a, b, c] of triples(count)) {
    const curve = throughThree(at, off, a, b, c);
    // A lens bows a side a little; a curve that swings further runs from one thing to another.
    if (!curve || Math.abs(curve[2]) > 2 * reach) continue;
    for (let n = 0; n < count; n++) distances[n] = Math.abs(distance(curve, at, off, n));
    distances.sort();
    const middle = distances[count >> 1] as number;
    if (middle < least) [best, least] = [curve, middle];
  }
  if (least === Number.POSITIVE_INFINITY) return along.map(() => false);
  const near = Math.max(NEAR, 3 * least);
  return at.map((_, n) => Math.abs(distance(best, at, off, n)) <= near);
}

/** Constant, slope and bend. */
type Curve = readonly [number, number, number];

const distance = ([p, q, r]: Curve, at: readonly number[], off: readonly number[], n: number) => {
  const x = at[n] as number;
  return (off[n] as number) - (p + (q + r * x) * x);
};

/** Places far apart, each place in some: enough that some three are all of the side. */
function* triples(count: number): Generator<readonly [number, number, number]> {
  const third = Math.floor(count / 3);
  for (const shift of [0, 7, 19, 31]) {
    for (let n = 0; n < third; n++) {
      yield [n, third + ((n + shift) % third), 2 * third + ((n + 3 * shift) % third)];
    }
  }
}

function throughThree(
  at: readonly number[],
  off: readonly number[],
  a: number,
  b: number,
  c: number,
): Curve | null {
  const [x0, x1, x2] = [at[a] as number, at[b] as number, at[c] as number];
  if (x0 === x1 || x1 === x2) return null;
  const [y0, y1, y2] = [off[a] as number, off[b] as number, off[c] as number];
  // Newton's divided differences.
  const first = (y1 - y0) / (x1 - x0);
  const bend = ((y2 - y1) / (x2 - x1) - first) / (x2 - x0);
  return [y0 - first * x0 + bend * x0 * x1, first - bend * (x0 + x1), bend];
}
