import type { Id } from "../../job/index.ts";
import { held, type OperatingPoint, type Wiring } from "../solve/index.ts";
import { decideAll, keyOf, type Memory } from "./memory.ts";
import { type Overload, openedIn, protectionsOf, worstOverload } from "./overload.ts";

/** Something that changed its mind on the way to rest: a decider by id, or a fuse that opened. */
export type Change =
  | { readonly id: string; readonly on: boolean }
  | { readonly blew: Overload; readonly point: OperatingPoint };

/** All relays and modules at one instant, after everything that follows at once has followed. */
export interface Rest {
  readonly memory: Memory;
  readonly point: OperatingPoint;
  /** Fuses and breakers that are open, those that opened before included. */
  readonly blown: ReadonlySet<Id>;
  /** Ids of deciders that never come to rest. */
  readonly oscillating: readonly string[];
  /** In the order in which they happened. */
  readonly changes: readonly Change[];
}

/**
 * Rounds, for each relay and module path, after which something that neither rests nor repeats
 * counts as never coming to rest: a chain takes one for each.
 */
const MOST_ROUNDS = 4;
const LEAST_ROUNDS = 2000;

/**
 * Relays and modules act one round at a time until nothing changes; then the fuse that carries
 * most for its size opens, and all follow again. `near`: how things stood just before.
 */
export function settle(
  wiring: Wiring,
  start: Memory,
  blownBefore: ReadonlySet<Id>,
  now: number,
  near: OperatingPoint | null,
): Rest {
  const changes: Change[] = [];
  let blown = blownBefore;
  let memory = start;
  let last = near;
  for (;;) {
    const found = followFrom(wiring, memory, blown, now, last);
    changes.push(...found.changes);
    const { point, oscillating } = found;
    last = point;
    memory = found.memory;
    const worst = worstOverload(wiring, found.carried, blown);
    if (!worst) return { memory, point, blown, oscillating, changes };
    changes.push({ blew: worst, point: found.worstPoint(worst.branch) });
    blown = new Set([...blown, worst.part]);
  }
}

/** One state that relays and modules went through, and what each fuse carried in it. */
interface Passed {
  readonly memory: Memory;
  readonly key: string;
  readonly carried: Float64Array;
}

interface Followed extends Pick<Rest, "memory" | "point" | "oscillating" | "changes"> {
  /** Amps of each of the wiring's fuses and breakers. */
  readonly carried: Float64Array;
  /** The state, of those that take turns, in which this branch carries most. */
  worstPoint(branch: number): OperatingPoint;
}

function followFrom(
  wiring: Wiring,
  start: Memory,
  blown: ReadonlySet<Id>,
  now: number,
  near: OperatingPoint | null,
): Followed {
  const isOpen = openedIn(blown);
  let last = near;
  const pointIn = ({ states }: Memory) => {
    last = held(wiring, states, [], null, false, blown.size > 0 ? isOpen : null, last);
    return last;
  };
  const most = Math.max(LEAST_ROUNDS, MOST_ROUNDS * wiring.deciders.length);
  const protections = protectionsOf(wiring);
  const passed: Passed[] = [];
  const changes: (readonly Change[])[] = [];
  const seen = new Map<string, number>();
  let memory = start;
  let key = keyOf(start);
  for (;;) {
    const point = pointIn(memory);
    const carried = Float64Array.from(protections, (index) =>
      Math.abs(point.amps[index] as number),
    );
    seen.set(key, passed.length);
    passed.push({ memory, key, carried });
    const next = decideAll(wiring, point, memory, now);
    const nextKey = keyOf(next);
    if (nextKey === key) {
      return {
        memory: next,
        point,
        oscillating: [],
        changes: changes.flat(),
        carried,
        worstPoint: () => point,
      };
    }
    const again = seen.get(nextKey) ?? (passed.length >= most ? passed.length >> 1 : undefined);
    if (again !== undefined) {
      return chatter(passed.slice(again), changes.slice(0, again).flat(), protections, pointIn);
    }
    changes.push(changesBetween(memory, next));
    memory = next;
    key = nextKey;
  }
}

/** Goes on from one and the same of the states that take turns, whichever was met first. */
function chatter(
  cycle: readonly Passed[],
  changes: readonly Change[],
  protections: readonly number[],
  pointIn: (memory: Memory) => OperatingPoint,
): Followed {
  const shown = cycle.reduce((least, one) => (one.key < least.key ? one : least));
  const oscillating = [...shown.memory.states.keys()].filter((id) =>
    cycle.some(
      ({ memory }) =>
        memory.states.get(id) !== shown.memory.states.get(id) ||
        memory.levels.get(id)?.active !== shown.memory.levels.get(id)?.active ||
        memory.levels.get(id)?.due !== shown.memory.levels.get(id)?.due,
    ),
  );
  return {
    memory: shown.memory,
    point: pointIn(shown.memory),
    oscillating,
    changes,
    // what heats a fuse is the mean of the squares
    carried: Float64Array.from(protections, (_, index) =>
      Math.sqrt(
        cycle.reduce((sum, { carried }) => sum + (carried[index] as number) ** 2, 0) / cycle.length,
      ),
    ),
    worstPoint(branch) {
      const index = protections.indexOf(branch);
      const amps = ({ carried }: Passed) => carried[index] as number;
      return pointIn(cycle.reduce((most, one) => (amps(one) > amps(most) ? one : most)).memory);
    },
  };
}

const changesBetween = (before: Memory, after: Memory): readonly Change[] =>
  [...after.states].flatMap(([id, on]) =>
    (before.states.get(id) ?? false) === on ? [] : [{ id, on }],
  );
