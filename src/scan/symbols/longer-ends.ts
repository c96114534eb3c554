import type { Bits } from "../raster.ts";

/** Pixels of thinned line, in line widths, by which the way of its end is told. */
const BACK = 2.5;

/**
 * Thinned lines drawn on to where their ink ends, but for half a line's width: thinning eats free ends,
 * and a symbol's bars would seem shorter than they are printed.
 */
export function withLongerEnds(thinned: Bits, ink: Bits, line: number): Bits {
  const { width, height } = thinned;
  const data = thinned.data.slice();
  const back = Math.max(3, Math.round(BACK * line));
  const around = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  const onLine = (at: number, but: number) =>
    around.map((step) => at + step).filter((to) => to !== but && thinned.data[to]);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const end = y * width + x;
      if (!thinned.data[end] || onLine(end, -1).length !== 1) continue;
      let [before, at, steps] = [-1, end, 0];
      while (steps < back) {
        const [next, ...more] = onLine(at, before);
        if (next === undefined || more.length > 0) break;
        [before, at] = [at, next];
        steps++;
      }
      if (steps < 3) continue;
      const [dx, dy] = [x - (at % width), y - Math.floor(at / width)];
      const length = Math.hypot(dx, dy);
      const [ux, uy] = [dx / length, dy / length];
      let reach = 0;
      while (reach < 2 * line) {
        const px = Math.round(x + ux * (reach + 1));
        const py = Math.round(y + uy * (reach + 1));
        if (px < 1 || py < 1 || px >= width - 1 || py >= height - 1) break;
        if (!ink.data[py * width + px]) break;
        reach++;
      }
      for (let by = 1; by <= reach - line / 2; by++) {
        data[Math.round(y + uy * by) * width + Math.round(x + ux * by)] = 1;
      }
    }
  }
  return { width, height, data };
}
