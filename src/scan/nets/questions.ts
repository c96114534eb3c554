import { Groups } from "../../base/index.ts";
import type { FollowedPage, Question } from "../lines/follow.ts";

/** A question with the nets that its answer would join. */
interface Asked {
  readonly question: Question;
  readonly nets: readonly number[];
}

/**
 * Questions whose answer can join two nets that are wanted, be it over others. What only hangs on one
 * such net, or on none, is a word or a scratch. `named` are the wanted ones.
 */
export function questionsThatMatter(
  { netOf, questions }: FollowedPage,
  named: ReadonlySet<number>,
): readonly Question[] {
  const room = new Int32Array(netOf.length);
  const all = questions.map((question): Asked => {
    const nets = new Set(question.stretches.map((stretch) => netOf[stretch] as number));
    return { question, nets: [...nets] };
  });
  let kept = all.filter(({ nets }) => nets.length > 1);
  for (;;) {
    const asked = new Map<number, number>();
    for (const { nets } of kept) for (const net of nets) asked.set(net, (asked.get(net) ?? 0) + 1);
    const reached = namedWithin(kept, named, room);
    const matters = (net: number) => named.has(net) || (asked.get(net) ?? 0) > 1;
    const next = kept.filter(
      ({ nets }) => nets.filter(matters).length > 1 && reached(nets[0] as number) > 1,
    );
    if (next.length === kept.length) return kept.map(({ question }) => question);
    kept = next;
  }
}

/** Of a net how many wanted ones it would be one with if every question were answered "joined". */
function namedWithin(
  asked: readonly Asked[],
  named: ReadonlySet<number>,
  room: Int32Array,
): (net: number) => number {
  const joined = new Groups(room.length, room);
  const wanted = new Set<number>();
  for (const { nets } of asked) {
    for (const net of nets) {
      joined.join(net, nets[0] as number);
      if (named.has(net)) wanted.add(net);
    }
  }
  const counts = new Map<number, number>();
  for (const net of wanted) {
    const group = joined.of(net);
    counts.set(group, (counts.get(group) ?? 0) + 1);
  }
  return (net) => counts.get(joined.of(net)) ?? 0;
}
