import type { Box, Point } from "../base/index.ts";
import { type FollowedPage, followLines, type Question } from "./lines/follow.ts";
import { type PreparedPage, preparePage } from "./lines/prepared-page.ts";
import type { Skeleton } from "./lines/skeleton.ts";
import type { Grey } from "./raster.ts";

export interface TraceInput {
  /** Named places where lines begin and end, in pixels of the picture. */
  readonly terminals: Readonly<Record<string, Point>>;
  /** Boxes of parts: no line is followed inside one. */
  readonly parts: readonly Box[];
}

export interface TracedNet {
  readonly id: string;
  /** The lines of it: each from end to end with its corners, in pixels of the picture. */
  readonly lines: readonly (readonly Point[])[];
  readonly terminals: readonly string[];
}

export interface Traced {
  readonly nets: readonly TracedNet[];
  readonly questions: readonly Question[];
}

/** How far from a line a terminal may be named, in line widths. */
const REACH = 6;

export function tracePicture(grey: Grey, input: TraceInput): Traced {
  return tracePage(preparePage(grey), input);
}

/** Every line that meets a terminal, as nets; what no terminal touches is left out. */
export function tracePage(page: PreparedPage, { terminals, parts }: TraceInput): Traced {
  const { scale } = page;
  const finer = ([x, y]: Point): Point => [(x + 0.5) * scale - 0.5, (y + 0.5) * scale - 0.5];
  const coarser = ([x, y]: Point): Point => [(x + 0.5) / scale - 0.5, (y + 0.5) / scale - 0.5];
  const boxes = parts.map(({ left, top, right, bottom }) => {
    const [a, b] = [finer([left, top]), finer([right, bottom])];
    return { left: a[0], top: a[1], right: b[0], bottom: b[1] };
  });
  const followed = followLines(page, boxes);
  const named = new Map<number, string[]>();
  for (const [name, at] of Object.entries(terminals)) {
    const stretch = nearestStretch(followed.skeleton, finer(at), REACH * page.lineWidth);
    if (stretch === null) continue;
    const net = followed.netOf[stretch] as number;
    const names = named.get(net);
    if (names) names.push(name);
    else named.set(net, [name]);
  }
  const nets = [...named].map(
    ([net, names], n): TracedNet => ({
      id: `N${n + 1}`,
      terminals: names,
      lines: followed.skeleton.stretches.flatMap(({ pixels }, stretch) => {
        if (followed.netOf[stretch] !== net) return [];
        const { width } = followed.skeleton;
        return [Array.from(pixels, (at) => coarser([at % width, Math.floor(at / width)]))];
      }),
    }),
  );
  const questions = questionsThatMatter(followed, new Set(named.keys())).map((one) => ({
    ...one,
    at: coarser(one.at),
  }));
  return { nets, questions };
}

/**
 * Questions whose answer can join two nets that have terminals, be it over nets without any. What
 * only hangs on one net with terminals, or on none, is a word or a scratch.
 */
function questionsThatMatter(
  { netOf, questions }: FollowedPage,
  named: ReadonlySet<number>,
): readonly Question[] {
  const netsOf = (question: Question) => [
    ...new Set(question.stretches.map((stretch) => netOf[stretch] as number)),
  ];
  let kept = questions.filter((question) => netsOf(question).length > 1);
  for (;;) {
    const asked = new Map<number, number>();
    for (const net of kept.flatMap(netsOf)) asked.set(net, (asked.get(net) ?? 0) + 1);
    const reached = namedWithin(kept.map(netsOf), named);
    const matters = (net: number) => named.has(net) || (asked.get(net) ?? 0) > 1;
    const next = kept.filter((question) => {
      const nets = netsOf(question);
      return nets.filter(matters).length > 1 && (reached.get(nets[0] as number) ?? 0) > 1;
    });
    if (next.length === kept.length) return kept;
    kept = next;
  }
}

/** Of each net how many with terminals it would be one with if every question were answered "joined". */
function namedWithin(
  groups: readonly (readonly number[])[],
  named: ReadonlySet<number>,
): ReadonlyMap<number, number> {
  const groupOf = new Map<number, Set<number>>();
  for (const nets of groups) {
    const all = new Set(nets.flatMap((net) => [...(groupOf.get(net) ?? [net])]));
    for (const net of all) groupOf.set(net, all);
  }
  return new Map(
    [...groupOf].map(([net, all]) => [net, [...all].filter((one) => named.has(one)).length]),
  );
}

/** An end of a line before its middle: terminals are where lines end. */
function nearestStretch(skeleton: Skeleton, [x, y]: Point, reach: number): number | null {
  let best: { stretch: number; far: number } | null = null;
  for (const node of skeleton.nodes) {
    const [stretch] = node.stretches;
    if (node.stretches.length !== 1 || stretch === undefined) continue;
    const far = Math.hypot(node.x - x, node.y - y);
    if (far <= reach && (best === null || far < best.far)) best = { stretch, far };
  }
  if (best) return best.stretch;
  skeleton.stretches.forEach(({ pixels }, stretch) => {
    for (const at of pixels) {
      const far = Math.hypot((at % skeleton.width) - x, Math.floor(at / skeleton.width) - y);
      if (far <= reach && (best === null || far < best.far)) best = { stretch, far };
    }
  });
  return (best as { stretch: number } | null)?.stretch ?? null;
}
