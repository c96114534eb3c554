/** One value a pixel, rows from the top. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/** A bell-shaped blur of about `radius` pixels: three box passes each way. */
export function blurred(raster: Raster, radius: number): Raster {
  let values = raster.values;
  for (let pass = 0; pass < 3; pass++) {
    values = boxPass(values, raster.width, raster.height, radius, 1, raster.width);
    values = boxPass(values, raster.height, raster.width, radius, raster.width, 1);
  }
  return { ...raster, values };
}

/** `radius` may be a fraction: the two outermost samples then count that much. */
function boxPass(
  source: Float32Array,
  length: number,
  lines: number,
  radius: number,
  step: number,
  lineStep: number,
): Float32Array {
  const target = new Float32Array(source.length);
  const whole = Math.floor(radius);
  const edge = radius - whole;
  const span = 2 * radius + 1;
  for (let line = 0; line < lines; line++) {
    const start = line * lineStep;
    const at = (index: number) =>
      source[start + Math.min(length - 1, Math.max(0, index)) * step] ?? 0;
    let sum = 0;
    for (let offset = -whole; offset <= whole; offset++) sum += at(offset);
    for (let index = 0; index < length; index++) {
      const outer = at(index - whole - 1) + at(index + whole + 1);
      target[start + index * step] = (sum + edge * outer) / span;
      sum += at(index + whole + 1) - at(index - whole);
    }
  }
  return target;
}

/** The value between pixels, by straight lines; `outside` beyond the edge. */
export function sample({ width, height, values }: Raster, x: number, y: number, outside: number) {
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return outside;
  const across = x - left;
  const down = y - top;
  const index = top * width + left;
  const upper = (values[index] ?? 0) * (1 - across) + (values[index + 1] ?? 0) * across;
  const lower =
    (values[index + width] ?? 0) * (1 - across) + (values[index + width + 1] ?? 0) * across;
  return upper * (1 - down) + lower * down;
}
