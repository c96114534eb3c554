import type { Sliced } from "../sliced.ts";
import type { Skeleton, SkeletonNode, Stretch } from "./skeleton.ts";

/** Nodes looked at in a slice. */
const SLICE = 5_000;

/**
 * A skeleton without some of its stretches: those that met only there go on as one. What is left between
 * forks that are none any more, no longer than `tiny` pixels, goes too.
 */
export function* withoutStretches(
  { width, height, nodes, stretches }: Skeleton,
  gone: ReadonlySet<number>,
  tiny: number,
): Sliced<Skeleton> {
  const left = new Set(stretches.keys());
  const drop = (stretch: number) => {
    if (!left.delete(stretch)) return;
    const { from, to } = stretches[stretch] as Stretch;
    for (const node of [from, to]) {
      const [only, second] = endsAt(node);
      if (only === undefined || second !== undefined) continue;
      if ((stretches[only] as Stretch).length <= tiny) drop(only);
    }
  };
  const endsAt = (node: number) =>
    (nodes[node] as SkeletonNode).stretches.filter((stretch) => left.has(stretch));
  for (const stretch of gone) drop(stretch);

  yield 0.2;
  const ends: number[][] = [];
  for (let node = 0; node < nodes.length; node++) {
    if (node % SLICE === SLICE - 1) yield 0.2 + (0.3 * node) / nodes.length;
    ends.push(endsAt(node));
  }
  const isPassed = (node: number) => {
    const [one, other, third] = ends[node] as number[];
    const wasFork = (nodes[node] as SkeletonNode).stretches.length > 2;
    return wasFork && other !== undefined && third === undefined && one !== other;
  };
  const newNodes: SkeletonNode[] = [];
  const numberOf = new Map<number, number>();
  const keep = (node: number): number => {
    const known = numberOf.get(node);
    if (known !== undefined) return known;
    const { x, y, pixels } = nodes[node] as SkeletonNode;
    numberOf.set(node, newNodes.length);
    return newNodes.push({ x, y, pixels, stretches: [] }) - 1;
  };
  const newStretches: Stretch[] = [];
  const walked = new Set<number>();
  const walk = (first: number, start: number) => {
    const chain: Int32Array[] = [];
    let [stretch, node, length] = [first, start, 0];
    for (;;) {
      walked.add(stretch);
      const { from, to, pixels, length: more } = stretches[stretch] as Stretch;
      chain.push(from === node ? pixels : pixels.slice().reverse());
      length += more;
      node = from === node ? to : from;
      const next = (ends[node] as number[]).find((one) => one !== stretch);
      if (node === start || next === undefined || !isPassed(node)) break;
      chain.push(Int32Array.from((nodes[node] as SkeletonNode).pixels));
      stretch = next;
    }
    const [from, to] = [keep(start), keep(node)];
    const number = newStretches.push({ from, to, pixels: joined(chain), length }) - 1;
    newNodes[from]?.stretches.push(number);
    newNodes[to]?.stretches.push(number);
  };
  // Last the rings in which no node is left: any may begin one.
  for (const isRing of [false, true]) {
    for (let node = 0; node < nodes.length; node++) {
      if (node % SLICE === SLICE - 1) yield isRing ? 1 : 0.5 + (0.5 * node) / nodes.length;
      if (!isRing && isPassed(node)) continue;
      for (const stretch of ends[node] as number[]) if (!walked.has(stretch)) walk(stretch, node);
    }
  }
  return { width, height, nodes: newNodes, stretches: newStretches };
}

function joined(parts: readonly Int32Array[]): Int32Array {
  const all = new Int32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
