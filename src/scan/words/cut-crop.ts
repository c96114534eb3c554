import type { Box } from "../../base/index.ts";
import { type Bits, type Grey, greyOf } from "../raster.ts";
import type { Bridge } from "./bridge.ts";
import { READ_PAD, READ_TALL, type WordTurn } from "./word-crop.ts";

/** What crops are cut from: the page, whose piece of ink each pixel is (0 none), and the lines taken out of it. */
export interface CropSource {
  readonly flat: Grey;
  readonly labels: Int32Array;
  readonly lines: Bits;
}

/** Letters are kept with so much of their own soft edge, pixels. */
export const EDGE = 2;
const MOST_TIMES = 4;

/** How many times letters so tall are enlarged for the reader. */
export const timesFor = (tall: number): number => Math.min(MOST_TIMES, READ_TALL / tall);

/**
 * The pieces of ink with these labels alone, on white, turned level, letters `READ_TALL` pixels tall.
 * `box` is around them with its edges inside, pixels of the page; what of lines `kept` has stays too.
 */
export function cutCrop(
  source: CropSource,
  box: Box,
  turn: WordTurn,
  own: ReadonlySet<number>,
  tall: number,
  kept: Bridge | null = null,
): Grey {
  const piece = pieceOf(source, box, own, kept);
  const upright = turn === 0 ? piece : turned(piece, turn);
  return padded(resized(upright, timesFor(tall)), READ_PAD);
}

/** Of a pixel near ink: whose it is; 0 is nobody's. */
const OWN = 1;
const OTHER = 2;

/** What is neither the word's own nor a line or other large ink, such as a faint hyphen, stays. */
function pieceOf(
  source: CropSource,
  box: Box,
  own: ReadonlySet<number>,
  kept: Bridge | null,
): Grey {
  const { flat, labels, lines } = source;
  const { width, height } = flat;
  const [left, top] = [box.left - EDGE, box.top - EDGE];
  const out = greyOf(box.right + EDGE - left + 1, box.bottom + EDGE - top + 1);
  const whose = new Uint8Array(out.data.length);
  const pixelAt = (x: number, y: number) =>
    x + left < 0 || y + top < 0 || x + left >= width || y + top >= height
      ? -1
      : (y + top) * width + x + left;
  const ink: { x: number; y: number; claimed: number }[] = [];
  for (let y = 0; y < out.height; y++) {
    for (let x = 0; x < out.width; x++) {
      const at = pixelAt(x, y);
      if (at < 0) continue;
      const isKept = lines.data[at] === 1 && kept?.has(source, x + left, y + top);
      if (own.has(labels[at] as number) || isKept) ink.push({ x, y, claimed: OWN });
      else if (labels[at] !== 0 || lines.data[at]) ink.push({ x, y, claimed: OTHER });
    }
  }
  // The nearest ink has a soft edge, of two as near the word's own.
  for (let reach = 0; reach <= EDGE; reach++) {
    for (const claimed of [OWN, OTHER]) {
      for (const one of ink) {
        if (one.claimed !== claimed) continue;
        for (
          let v = Math.max(0, one.y - reach);
          v <= Math.min(out.height - 1, one.y + reach);
          v++
        ) {
          for (
            let u = Math.max(0, one.x - reach);
            u <= Math.min(out.width - 1, one.x + reach);
            u++
          ) {
            const at = v * out.width + u;
            if (whose[at] === 0) whose[at] = claimed;
          }
        }
      }
    }
  }
  for (let y = 0; y < out.height; y++) {
    for (let x = 0; x < out.width; x++) {
      const at = pixelAt(x, y);
      const spot = y * out.width + x;
      out.data[spot] = at < 0 || whose[spot] === OTHER ? 255 : (flat.data[at] as number);
    }
  }
  return out;
}

/** Turned back by a quarter: what was read from the bottom up (270) or the top down (90) lies level. */
export function turned({ width, height, data }: Grey, turn: 90 | 270): Grey {
  const out = greyOf(height, width);
  for (let y = 0; y < out.height; y++) {
    for (let x = 0; x < out.width; x++) {
      const [u, v] = turn === 270 ? [y, height - 1 - x] : [width - 1 - y, x];
      out.data[y * out.width + x] = data[v * width + u] as number;
    }
  }
  return out;
}

/** Half a turn: an upright crop read the other way. */
export function headOver({ width, height, data }: Grey): Grey {
  return { width, height, data: data.slice().reverse() };
}

/** So many times as large, brightness between pixels in a straight line. */
export function resized({ width, height, data }: Grey, times: number): Grey {
  const out = greyOf(
    Math.max(1, Math.round(width * times)),
    Math.max(1, Math.round(height * times)),
  );
  const at = (x: number, y: number) =>
    data[
      Math.min(height - 1, Math.max(0, y)) * width + Math.min(width - 1, Math.max(0, x))
    ] as number;
  for (let y = 0; y < out.height; y++) {
    const v = (y + 0.5) / times - 0.5;
    const top = Math.floor(v);
    for (let x = 0; x < out.width; x++) {
      const u = (x + 0.5) / times - 0.5;
      const left = Math.floor(u);
      const across = u - left;
      const upper = at(left, top) * (1 - across) + at(left + 1, top) * across;
      const lower = at(left, top + 1) * (1 - across) + at(left + 1, top + 1) * across;
      out.data[y * out.width + x] = upper * (1 - v + top) + lower * (v - top) + 0.5;
    }
  }
  return out;
}

function padded({ width, height, data }: Grey, pad: number): Grey {
  const out = greyOf(width + 2 * pad, height + 2 * pad);
  out.data.fill(255);
  for (let y = 0; y < height; y++) {
    out.data.set(data.subarray(y * width, (y + 1) * width), (y + pad) * out.width + pad);
  }
  return out;
}
