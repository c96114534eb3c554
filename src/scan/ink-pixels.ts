import { wordsOf } from "./packed-bits.ts";
import type { Bits } from "./raster.ts";

/** Calls `visit` with each pixel of ink between two places of a picture (`from` in, `to` out). */
export type InkPixels = (from: number, to: number, visit: (at: number) => void) => void;

/**
 * Finds ink four pixels at a time: most of a page is paper, and is passed over by the word. In the order
 * of the rows.
 */
export function inkPixels({ data }: Bits): InkPixels {
  const words = wordsOf(data);
  return (from, to, visit) => {
    let at = from;
    for (; at < to && at & 3; at++) if (data[at]) visit(at);
    for (; at + 4 <= to; at += 4) {
      if (words[at >> 2] === 0) continue;
      if (data[at]) visit(at);
      if (data[at + 1]) visit(at + 1);
      if (data[at + 2]) visit(at + 2);
      if (data[at + 3]) visit(at + 3);
    }
    for (; at < to; at++) if (data[at]) visit(at);
  };
}
