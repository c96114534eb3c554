import { type Branch, EXTRA_OHMS, type Wiring } from "../../circuit/index.ts";
import { type Id, ownerOf, type Part, type PinRef, pinRef, type Wire } from "../../job/index.ts";
import type { Harm } from "./trial-fault.ts";

/** Wires of a lost ground whose far ends are tied to one another one by one, at most. */
const MOST_IN_STAR = 12;

/** A joint that parts, and one that corrodes. */
export interface JointHarm {
  readonly full: Harm;
  readonly partly: Harm;
}

/**
 * What a bad joint does to a state, without putting the machine together anew: null where the meter
 * touches the joint itself, so that it matters which side of it a probe lies on, and where it is more
 * than a few branches. `at`: a pin, whose wires part from the part; or a part, all of whose pins do.
 */
export function jointHarm(
  wiring: Wiring,
  parts: ReadonlyMap<Id, Part>,
  wiresAt: ReadonlyMap<PinRef, readonly Wire[]>,
  probed: ReadonlySet<string>,
  at: PinRef | Id,
): JointHarm | null {
  const part = parts.get(at.includes(":") ? ownerOf(at) : at);
  if (!part) return null;
  if (part.kind !== "ground" && part.kind !== "splice")
    return probed.has(at) ? null : insidesAt(wiring, part.id, at);
  const pin = pinRef(part.id, "1");
  if (probed.has(pin)) return null;
  const wires = new Set((wiresAt.get(pin) ?? []).map(({ id }) => id));
  const opens = wiring.branches.filter(
    ({ owner, element }) => owner !== null && element === null && wires.has(owner),
  );
  if (part.kind === "splice" || opens.length < 2) return inSeries(opens);
  if (opens.length > MOST_IN_STAR) return null;
  const probe = wiring.probe(pin);
  if (!probe.ok) return null;
  const legs = opens.map(({ a, b, acts }) => ({
    far: a === probe.node ? b : a,
    siemens: 1 / (acts.is === "ohmic" ? acts.ohms : Number.POSITIVE_INFINITY),
  }));
  return {
    full: { opens, adds: starOf(legs) },
    partly: { opens, adds: starOf([...legs, { far: probe.node, siemens: 1 / EXTRA_OHMS }]) },
  };
}

/** Each of them by itself. */
function inSeries(opens: readonly Branch[]): JointHarm | null {
  const adds = opens.flatMap((branch): readonly Branch[] => {
    const { acts } = branch;
    return acts.is === "ohmic"
      ? [{ ...branch, acts: { ...acts, ohms: acts.ohms + EXTRA_OHMS } }]
      : [];
  });
  return adds.length < opens.length ? null : { full: { opens, adds: [] }, partly: { opens, adds } };
}

/** The wires still meet at the terminal, and nothing inside the part has it any more. */
function insidesAt({ branches }: Wiring, part: Id, pin: PinRef): JointHarm | null {
  const own = branches.filter(({ owner, element }) => owner === part && element !== null);
  const opens = own.filter(
    ({ element }) => element && [element.a, element.b].some((end) => pinRef(part, end) === pin),
  );
  // several that share a bad joint are no several bad joints
  return opens.length === 1 ? inSeries(opens) : null;
}

/** A wire to where it comes from. */
interface Leg {
  readonly far: number;
  readonly siemens: number;
}

/** The wires still meet, but no longer at the node where they did: the mesh between their far ends. */
function starOf(legs: readonly Leg[]): readonly Branch[] {
  const all = legs.reduce((sum, { siemens }) => sum + siemens, 0);
  return legs.flatMap((one, index) =>
    legs.slice(index + 1).flatMap((other): readonly Branch[] => {
      const ohms = all / (one.siemens * other.siemens);
      if (one.far === other.far || !Number.isFinite(ohms)) return [];
      const acts = { is: "ohmic", ohms, low: ohms, high: ohms } as const;
      return [
        { a: one.far, b: other.far, owner: null, element: null, acts, gate: null, closedIn: null },
      ];
    }),
  );
}
