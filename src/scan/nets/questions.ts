import type { FollowedPage, Question } from "../lines/follow.ts";

/**
 * Questions whose answer can join two nets that are wanted, be it over others. What only hangs on one
 * such net, or on none, is a word or a scratch. `named` are the wanted ones.
 */
export function questionsThatMatter(
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

/** Of each net how many wanted ones it would be one with if every question were answered "joined". */
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
