import { addTo } from "../../base/index.ts";
import type { Branch } from "../../circuit/index.ts";
import type { Id } from "../../job/index.ts";
import type { Feels } from "./feels.ts";
import type { Screen } from "./single-faults.ts";
import type { FaultTrial } from "./trial-fault.ts";

/** A reading in its state, with what it feels there. */
export interface Screened {
  readonly trial: FaultTrial;
  /** Branches of its wiring by their names. */
  readonly named: ReadonlyMap<string, readonly Branch[]>;
  /** Null where anything may matter. */
  readonly feels: Feels | null;
}

/** Places that a state does not have. */
const NOWHERE = -1;

/**
 * What may matter to all of them: a fault must move each reading by itself, by what relays and diodes
 * do after it, or by a fuse that it blows in any of the states. Null where too much matters in each.
 */
export function screenOf(all: readonly Screened[]): Screen | null {
  const felt = all.flatMap((one) => (one.feels?.isWhole ? [{ ...one, feels: one.feels }] : []));
  if (felt.length === 0) return null;
  const fuses = new Set(felt.flatMap(({ feels }) => [...feels.fuses]));
  // a state is felt alike by all readings in it, a reading that feels everything apart
  const blowers = felt.map((one) => ({ ...one, blowing: one.feels.blowing(fuses) }));
  const mayBlow = (at: (of: Screened) => readonly [number, number] | null): boolean =>
    blowers.some((one) => {
      const ends = at(one);
      return ends !== null && one.blowing.some((feeler) => feeler.touches(ends[0], ends[1]));
    });
  /** `at`: the two nodes that touch in a state; a state without such places says nothing. */
  const touch = (at: (of: Screened) => readonly [number, number] | null): boolean => {
    let isBlowing: boolean | null = null;
    return felt.every((one) => {
      const ends = at(one);
      if (ends === null || one.feels.touches(ends[0], ends[1])) return true;
      if (one.feels.fuses.size === 0) return false;
      isBlowing ??= mayBlow(at);
      return isBlowing;
    });
  };
  const owned = felt.map(({ trial }) => {
    const found = new Map<Id, Branch[]>();
    for (const branch of trial.healthy.wiring.branches)
      if (branch.owner !== null) addTo(found, branch.owner, branch);
    return found;
  });
  return {
    opens: (name) =>
      felt.every(({ named, feels }) => {
        const own = named.get(name);
        return own === undefined || feels.opens(own);
      }),
    opensIn: (ids) =>
      felt.every(({ feels }, at) => feels.opens(ids.flatMap((id) => owned[at]?.get(id) ?? []))),
    across: (name) =>
      touch(({ named }) => {
        const [branch] = named.get(name) ?? [];
        return branch ? [branch.a, branch.b] : null;
      }),
    sticks: (by) => felt.every(({ feels }) => feels.deciders.has(by)),
    touching: (places) => {
      const nodes = new Map(
        all.map((one): [FaultTrial, Int32Array] => [
          one.trial,
          Int32Array.from(places, (place) => {
            const at = one.trial.healthy.wiring.probe(place);
            return at.ok ? at.node : NOWHERE;
          }),
        ]),
      );
      const isTouch = (a: number, b: number) =>
        touch(({ trial }) => {
          const own = nodes.get(trial) as Int32Array;
          const [one, other] = [own[a] as number, own[b] as number];
          return one === NOWHERE || other === NOWHERE ? null : [one, other];
        });
      const [first] = felt;
      const found = new Set<number>();
      const add = (a: number, b: number) =>
        found.add(Math.min(a, b) * places.length + Math.max(a, b));
      const nodesOf = (one: Screened) => nodes.get(one.trial) as Int32Array;
      if (first) {
        first.feels.touching(nodesOf(first), add);
        for (const one of first.feels.fuses.size > 0 ? blowers : [])
          for (const feeler of one.blowing) feeler.touching(nodesOf(one), add);
      }
      return [...found]
        .sort((a, b) => a - b)
        .map((key): readonly [number, number] => [
          Math.floor(key / places.length),
          key % places.length,
        ])
        .filter(([a, b]) => isTouch(a, b));
    },
  };
}
