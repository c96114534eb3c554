/** A line between two nodes of a net, by number; `run`: which of its runs it is, null for none. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly run: number | null;
}

/** A link as a walk goes along it: from its one end or, turned, from the other. */
export interface Walked {
  readonly link: Link;
  readonly isTurned: boolean;
}

/** Links one after the other, between two nodes where something is. */
export interface Chain {
  readonly from: number;
  readonly to: number;
  readonly walk: readonly Walked[];
}

/** What a node is to the lines that come to it. */
export interface Standing {
  /** A pin or a wire is there: lines end at it. */
  readonly isPlace: boolean;
  /** The picture has a line end there, which is kept. */
  readonly isEnd: boolean;
}

/** Of each node how many ends of links come to it. */
export function countEnds(links: readonly Link[]): ReadonlyMap<number, number> {
  const count = new Map<number, number>();
  for (const node of links.flatMap(({ from, to }) => [from, to]))
    count.set(node, (count.get(node) ?? 0) + 1);
  return count;
}

/**
 * Links put together to chains between places, ends and joints. What leads nowhere, and what only comes
 * back to where it began, is left out.
 */
export function chainsOf(links: readonly Link[], standing: (node: number) => Standing): Chain[] {
  for (let now = withoutLooseEnds(links, standing); ; ) {
    const count = countEnds(now);
    const chains = walks(now, (node) => standing(node).isPlace || count.get(node) !== 2);
    const round = new Set(
      chains.flatMap(({ from, to, walk }) => (from === to ? walk.map(({ link }) => link) : [])),
    );
    if (round.size === 0) return chains;
    now = withoutLooseEnds(
      now.filter((link) => !round.has(link)),
      standing,
    );
  }
}

/** Without those that lead, alone or one after the other, to a node where nothing is. */
function withoutLooseEnds(
  links: readonly Link[],
  standing: (node: number) => Standing,
): readonly Link[] {
  let now = links;
  for (;;) {
    const count = countEnds(now);
    const isLoose = (node: number) => {
      const { isPlace, isEnd } = standing(node);
      return count.get(node) === 1 && !isPlace && !isEnd;
    };
    const next = now.filter(({ from, to }) => !isLoose(from) && !isLoose(to));
    if (next.length === now.length) return now;
    now = next;
  }
}

/** Walks from stop to stop; what goes round without one is left out. */
function walks(links: readonly Link[], isStop: (node: number) => boolean): Chain[] {
  const at = new Map<number, Link[]>();
  for (const link of links) {
    for (const node of new Set([link.from, link.to])) at.set(node, [...(at.get(node) ?? []), link]);
  }
  const used = new Set<Link>();
  const chains: Chain[] = [];
  for (const [start, out] of at) {
    if (!isStop(start)) continue;
    for (const first of out) {
      if (used.has(first)) continue;
      const walk: Walked[] = [];
      let node = start;
      for (let link: Link | undefined = first; link; ) {
        used.add(link);
        const isTurned = link.from !== node;
        walk.push({ link, isTurned });
        node = isTurned ? link.from : link.to;
        link = isStop(node) ? undefined : at.get(node)?.find((one) => !used.has(one));
      }
      chains.push({ from: start, to: node, walk });
    }
  }
  return chains;
}
