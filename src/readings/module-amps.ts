import type { Branch, Unknown, Wiring } from "../circuit/index.ts";

/** Amps that a module of which nothing is said may draw for itself (common practice). */
const OWN_AMPS = 2;

const kept = new WeakMap<readonly Branch[], Map<Unknown, number>>();

/**
 * Amps that may run through a module of which nothing is said: its own, and those of the loads that
 * are drawn to its pins and that it may have switched on.
 */
export function moduleAmps(wiring: Wiring, module: Unknown): number {
  const known = kept.get(wiring.branches) ?? new Map<Unknown, number>();
  kept.set(wiring.branches, known);
  const before = known.get(module);
  if (before !== undefined) return before;
  const branchesAt = neighbours(wiring);
  const loads = new Set<Branch>();
  for (const node of module.nodes)
    for (const load of loadsOn(node, branchesAt, wiring.grounds)) loads.add(load);
  const amps = [...loads].reduce(
    (sum, { acts }) => sum + ampsOf(acts, wiring.systemVoltage),
    OWN_AMPS,
  );
  known.set(module, amps);
  return amps;
}

/**
 * Modules of which nothing is said at whose pin one of the nodes lies, with nothing but loads on it:
 * what is switched on there has system voltage, however few ohms a cold lamp has.
 */
export function driversOf(wiring: Wiring, places: readonly number[]): readonly Unknown[] {
  const branchesAt = neighbours(wiring);
  return wiring.unknowns.filter(({ nodes, joint }) =>
    places.some(
      (place) =>
        joint !== true &&
        nodes.includes(place) &&
        loadsOn(place, branchesAt, wiring.grounds).length > 0,
    ),
  );
}

/** Loads on the wires at a pin; none where they lead to a ground, a fuse or a source: it drives nothing. */
function loadsOn(
  pin: number,
  branchesAt: ReadonlyMap<number, readonly Branch[]>,
  grounds: readonly number[],
): readonly Branch[] {
  const loads: Branch[] = [];
  const seen = new Set([pin]);
  for (const node of seen) {
    if (grounds.includes(node)) return [];
    for (const branch of branchesAt.get(node) ?? []) {
      const { a, b, element, acts } = branch;
      const law = element?.law.is;
      if (acts.is === "source" || law === "protection") return [];
      // a winding's own diode blocks for as long as the winding is on
      const works = acts.is === "junction" ? law === "led" : law === "load" || law === "coil";
      if (works) loads.push(branch);
      else if (element === null || law === "contact" || law === "relay-contact") {
        seen.add(a);
        seen.add(b);
      }
    }
  }
  return loads;
}

/** A at most at so many volts, turning and hot. */
function ampsOf(acts: Branch["acts"], volts: number): number {
  switch (acts.is) {
    case "ohmic":
      return acts.low > 0 ? volts / acts.low : 0;
    case "filament":
      return volts / (acts.hot * acts.spread[0]);
    case "junction":
      return acts.ohms > 0
        ? Math.max(0, volts - acts.volts) / (acts.ohms * (acts.spread?.[0] ?? 1))
        : 0;
    default:
      return 0;
  }
}

const tables = new WeakMap<readonly Branch[], ReadonlyMap<number, readonly Branch[]>>();

/** Branches at each node of a wiring. */
function neighbours({ branches }: Wiring): ReadonlyMap<number, readonly Branch[]> {
  const known = tables.get(branches);
  if (known) return known;
  const table = new Map<number, Branch[]>();
  for (const branch of branches) {
    for (const node of [branch.a, branch.b]) {
      const list = table.get(node);
      if (list) list.push(branch);
      else table.set(node, [branch]);
    }
  }
  tables.set(branches, table);
  return table;
}
