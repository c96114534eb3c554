import { IntList } from "../int-list.ts";
import { packed, placesIn } from "../packed-bits.ts";
import type { Bits } from "../raster.ts";
import { asPart, type Sliced } from "../sliced.ts";

/** A stretch of thinned line between two nodes, its pixels in order, both ends' nodes left out. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Places in the picture (y times width plus x), from the node `from` to the node `to`. */
  readonly pixels: Int32Array;
  /** Pixels, a slanting step as the root of two, from node to node. */
  readonly length: number;
}

/** Where stretches end or meet: pixels with another number of neighbours than two, that touch. */
export interface SkeletonNode {
  readonly x: number;
  readonly y: number;
  readonly pixels: readonly number[];
  /** Stretches that end here; one that begins and ends here stands twice. */
  readonly stretches: number[];
}

export interface Skeleton {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly SkeletonNode[];
  readonly stretches: readonly Stretch[];
}

/** Pixels a slice. */
const SLICE = 60_000;

/** The graph of lines one pixel wide, as `thin` leaves them. */
export function* skeletonOf(thinned: Bits): Sliced<Skeleton> {
  const copy = { ...thinned, data: thinned.data.slice() };
  const places = yield* asPart(placesOf(copy), 0, 0.2);
  return yield* asPart(markedSkeleton(copy, places), 0.2, 1);
}

/** The places of all pixels of lines, in order. */
export function* placesOf(lines: Bits): Sliced<Int32Array> {
  return yield* asPart(placesIn(yield* asPart(packed(lines), 0, 0.8)), 0.8, 1);
}

/** A pixel of line, by bits: that it is one, how many neighbours it has, that it was walked, that a node has it. */
const INK = 1;
const DEGREE = 1;
const WALKED = 32;
const NODE = 64;
const degreeOf = (mark: number) => (mark >> DEGREE) & 15;

/**
 * As `skeletonOf`, of lines whose places are known. Works on `lines` itself: its pixels are left marked,
 * none of them 0, but for those on the picture's own edge, which are taken out.
 */
export function* markedSkeleton(lines: Bits, places: Int32Array): Sliced<Skeleton> {
  const { width, height, data: marks } = lines;
  markInner(lines, places);
  yield 0.1;
  const tracer = new Tracer(width, marks);
  for (let from = 0; from < places.length; from += SLICE) {
    tracer.markDegrees(places, from, Math.min(places.length, from + SLICE));
    yield 0.1 + (0.3 * from) / places.length;
  }
  const nodeOf = new Map<number, number>();
  const nodes: SkeletonNode[] = [];
  const addNode = (pixels: readonly number[]) => {
    let [x, y] = [0, 0];
    for (const at of pixels) {
      nodeOf.set(at, nodes.length);
      marks[at] = (marks[at] as number) | NODE;
      x += at % width;
      y += Math.floor(at / width);
    }
    nodes.push({ x: x / pixels.length, y: y / pixels.length, pixels, stretches: [] });
  };
  for (let n = 0; n < places.length; n++) {
    if (n % SLICE === SLICE - 1) yield 0.4 + (0.1 * n) / places.length;
    const at = places[n] as number;
    const mark = marks[at] as number;
    const degree = degreeOf(mark);
    if (mark === 0 || degree === 2 || mark & NODE) continue;
    addNode(degree < 2 ? [at] : tracer.flood(at));
  }
  const stretches: Stretch[] = [];
  const pixels = new IntList();
  let walked = 0;
  const walk = (node: number, start: number, first: number) => {
    pixels.clear();
    let [before, at] = [start, first];
    while (!((marks[at] as number) & NODE)) {
      pixels.push(at);
      marks[at] = (marks[at] as number) | WALKED;
      const next = tracer.onward(at, before);
      if (next < 0) break;
      [before, at] = [at, next];
    }
    const to = nodeOf.get(at) ?? node;
    const number = stretches.length;
    const inOrder = pixels.values();
    walked += inOrder.length;
    stretches.push({
      from: node,
      to,
      pixels: inOrder,
      length: lengthOf(inOrder, nodes[node] as SkeletonNode, nodes[to] as SkeletonNode, width),
    });
    nodes[node]?.stretches.push(number);
    nodes[to]?.stretches.push(number);
  };
  const walkFrom = (node: number) => {
    for (const at of (nodes[node] as SkeletonNode).pixels) {
      const count = tracer.neighbours(at);
      const besides = tracer.found.slice(0, count);
      for (const beside of besides) {
        const mark = marks[beside] as number;
        const other = mark & NODE ? nodeOf.get(beside) : undefined;
        if (other === node) continue;
        if (other !== undefined ? other > node : !(mark & WALKED)) walk(node, at, beside);
      }
    }
  };
  for (let node = 0, told = 0; node < nodes.length; node++) {
    walkFrom(node);
    if (walked - told < SLICE) continue;
    told = walked;
    yield 0.5 + (0.4 * walked) / places.length;
  }
  // What is left is closed rings: any pixel of one may stand for a node.
  for (let n = 0; n < places.length; n++) {
    if (n % SLICE === SLICE - 1) yield 0.9 + (0.1 * n) / places.length;
    const at = places[n] as number;
    const mark = marks[at] as number;
    if (mark === 0 || mark & (WALKED | NODE)) continue;
    addNode([at]);
    walkFrom(nodes.length - 1);
  }
  return { width, height, nodes, stretches };
}

/** Marks lines as such, but for their pixels on the picture's own edge, which are taken out. */
function markInner({ width, height, data: marks }: Bits, places: Int32Array): void {
  for (let n = 0; n < places.length; n++) {
    const at = places[n] as number;
    const x = at % width;
    const isEdge = x === 0 || x === width - 1 || at < width || at >= width * (height - 1);
    marks[at] = isEdge ? 0 : INK;
  }
}

class Tracer {
  /** What `neighbours` found last. */
  readonly found: number[] = [0, 0, 0, 0, 0, 0, 0, 0];
  private readonly width: number;
  private readonly marks: Uint8Array;

  constructor(width: number, marks: Uint8Array) {
    this.width = width;
    this.marks = marks;
  }

  /**
   * Finds the pixels of line beside one, sides before corners, and counts them; over a corner only where
   * no side leads there as well.
   */
  neighbours(at: number): number {
    const { marks, width, found } = this;
    const above = at - width;
    const below = at + width;
    const up = marks[above];
    const east = marks[at + 1];
    const down = marks[below];
    const west = marks[at - 1];
    let count = 0;
    if (up) found[count++] = above;
    if (east) found[count++] = at + 1;
    if (down) found[count++] = below;
    if (west) found[count++] = at - 1;
    if (!up && !east && marks[above + 1]) found[count++] = above + 1;
    if (!down && !east && marks[below + 1]) found[count++] = below + 1;
    if (!down && !west && marks[below - 1]) found[count++] = below - 1;
    if (!up && !west && marks[above - 1]) found[count++] = above - 1;
    return count;
  }

  /** Marks some places of lines with how many neighbours they have. */
  markDegrees(places: Int32Array, from: number, to: number): void {
    const { marks } = this;
    for (let n = from; n < to; n++) {
      const at = places[n] as number;
      if (marks[at]) marks[at] = INK | (this.neighbours(at) << DEGREE);
    }
  }

  /** The pixel after one on a walk that came from `before`; -1 where it ends. */
  onward(at: number, before: number): number {
    const count = this.neighbours(at);
    for (let n = 0; n < count; n++) {
      const beside = this.found[n] as number;
      if (beside === before) continue;
      const mark = this.marks[beside] as number;
      if (!(mark & WALKED) || mark & NODE) return beside;
    }
    return -1;
  }

  /** All pixels with more than two neighbours that touch one another, marked as a node's. */
  flood(from: number): number[] {
    const { marks, width } = this;
    const around = [-width, 1, width, -1, -width + 1, width + 1, width - 1, -width - 1];
    const found = [from];
    marks[from] = (marks[from] as number) | NODE;
    for (let n = 0; n < found.length; n++) {
      for (const step of around) {
        const beside = (found[n] as number) + step;
        const mark = marks[beside];
        if (!mark || mark & NODE || degreeOf(mark) <= 2) continue;
        marks[beside] = mark | NODE;
        found.push(beside);
      }
    }
    return found;
  }
}

function lengthOf(pixels: Int32Array, from: SkeletonNode, to: SkeletonNode, width: number): number {
  const count = pixels.length;
  if (count === 0) return Math.hypot(to.x - from.x, to.y - from.y);
  const away = (at: number, { x, y }: SkeletonNode) =>
    Math.hypot((at % width) - x, Math.floor(at / width) - y);
  let length = away(pixels[0] as number, from);
  for (let n = 1; n < count; n++) {
    // From one pixel to the next it is a step: aside, or slanting.
    const step = Math.abs((pixels[n] as number) - (pixels[n - 1] as number));
    length += step === 1 || step === width ? 1 : Math.SQRT2;
  }
  return length + away(pixels[count - 1] as number, to);
}
