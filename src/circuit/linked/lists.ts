import type { Space } from "./space.ts";

/** Lists by number, end to end in one array: those of `n` from `start[n]` up to `start[n + 1]`. */
export interface Lists {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** Each of `numbers` put to the one of `size` at the same place of `to`, in the order in which they come. */
export function gather(size: number, to: Int32Array, numbers: Int32Array, space: Space): Lists {
  // Counted two places further on, laid down one further on: in the end each start is where it belongs.
  const start = space.zeros(size + 2);
  for (let at = 0; at < to.length; at++) {
    const counted = (to[at] as number) + 2;
    start[counted] = (start[counted] as number) + 1;
  }
  for (let n = 2; n <= size; n++) start[n + 1] = (start[n + 1] as number) + (start[n] as number);
  const list = space.unset(to.length);
  for (let at = 0; at < to.length; at++) {
    const next = (to[at] as number) + 1;
    const place = start[next] as number;
    list[place] = numbers[at] as number;
    start[next] = place + 1;
  }
  return { start, list };
}
