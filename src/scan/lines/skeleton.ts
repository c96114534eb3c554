import type { Bits } from "../raster.ts";
import type { Sliced } from "../sliced.ts";

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

/** The graph of lines one pixel wide, as `thin` leaves them. */
export function* skeletonOf(thinned: Bits): Sliced<Skeleton> {
  const { width, height, data } = thinned;
  const tracer = new Tracer(width, framed(thinned));
  const degrees = new Uint8Array(data.length);
  const ink: number[] = [];
  for (let at = 0; at < data.length; at++) {
    if (!tracer.ink[at]) continue;
    ink.push(at);
    degrees[at] = tracer.neighbours(at).length;
  }
  yield 0.5;
  const nodeOf = new Map<number, number>();
  const nodes: SkeletonNode[] = [];
  const addNode = (pixels: readonly number[]) => {
    let [x, y] = [0, 0];
    for (const at of pixels) {
      nodeOf.set(at, nodes.length);
      x += at % width;
      y += Math.floor(at / width);
    }
    nodes.push({ x: x / pixels.length, y: y / pixels.length, pixels, stretches: [] });
  };
  for (const at of ink) {
    const degree = degrees[at] as number;
    if (degree === 2 || nodeOf.has(at)) continue;
    addNode(degree < 2 ? [at] : tracer.flood(at, (beside) => (degrees[beside] as number) > 2));
  }
  const stretches: Stretch[] = [];
  const done = new Uint8Array(data.length);
  const walk = (node: number, start: number, first: number) => {
    const pixels: number[] = [];
    let [before, at] = [start, first];
    while (!nodeOf.has(at)) {
      pixels.push(at);
      done[at] = 1;
      const next = tracer
        .neighbours(at)
        .find((beside) => beside !== before && (!done[beside] || nodeOf.has(beside)));
      if (next === undefined) break;
      [before, at] = [at, next];
    }
    const to = nodeOf.get(at) ?? node;
    const number = stretches.length;
    stretches.push({
      from: node,
      to,
      pixels: Int32Array.from(pixels),
      length: lengthOf(pixels, nodes[node] as SkeletonNode, nodes[to] as SkeletonNode, width),
    });
    nodes[node]?.stretches.push(number);
    nodes[to]?.stretches.push(number);
  };
  const walkFrom = (node: number) => {
    for (const at of (nodes[node] as SkeletonNode).pixels) {
      for (const beside of tracer.neighbours(at)) {
        const other = nodeOf.get(beside);
        if (other === node) continue;
        if (other !== undefined ? other > node : !done[beside]) walk(node, at, beside);
      }
    }
  };
  for (let node = 0; node < nodes.length; node++) walkFrom(node);
  // What is left is closed rings: any pixel of one may stand for a node.
  for (const at of ink) {
    if (done[at] || nodeOf.has(at)) continue;
    addNode([at]);
    walkFrom(nodes.length - 1);
  }
  return { width, height, nodes, stretches };
}

/** A copy with paper all round, so that every pixel of ink has eight neighbours. */
function framed({ width, height, data }: Bits): Uint8Array {
  const ink = data.slice();
  ink.fill(0, 0, width);
  ink.fill(0, width * (height - 1));
  for (let y = 1; y < height - 1; y++) {
    ink[y * width] = 0;
    ink[y * width + width - 1] = 0;
  }
  return ink;
}

class Tracer {
  readonly ink: Uint8Array;
  private readonly sides: readonly number[];
  private readonly corners: readonly (readonly [number, number, number])[];

  constructor(width: number, ink: Uint8Array) {
    this.ink = ink;
    this.sides = [-width, 1, width, -1];
    this.corners = [
      [-width + 1, -width, 1],
      [width + 1, width, 1],
      [width - 1, width, -1],
      [-width - 1, -width, -1],
    ];
  }

  /** Pixels of ink beside one; over a corner only where no side leads there as well. */
  neighbours(at: number): number[] {
    const { ink } = this;
    const found: number[] = [];
    for (const side of this.sides) if (ink[at + side]) found.push(at + side);
    for (const [corner, one, other] of this.corners) {
      if (ink[at + corner] && !ink[at + one] && !ink[at + other]) found.push(at + corner);
    }
    return found;
  }

  flood(from: number, isIn: (at: number) => boolean): number[] {
    const found = [from];
    const seen = new Set(found);
    for (let n = 0; n < found.length; n++) {
      const at = found[n] as number;
      for (const step of [...this.sides, ...this.corners.map(([corner]) => corner)]) {
        const beside = at + step;
        if (!this.ink[beside] || seen.has(beside) || !isIn(beside)) continue;
        seen.add(beside);
        found.push(beside);
      }
    }
    return found;
  }
}

function lengthOf(
  pixels: readonly number[],
  from: SkeletonNode,
  to: SkeletonNode,
  width: number,
): number {
  let [x, y, length] = [from.x, from.y, 0];
  for (const at of pixels) {
    const [nextX, nextY] = [at % width, Math.floor(at / width)];
    length += Math.hypot(nextX - x, nextY - y);
    [x, y] = [nextX, nextY];
  }
  return length + Math.hypot(to.x - x, to.y - y);
}
