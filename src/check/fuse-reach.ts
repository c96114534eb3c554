import {
  ALWAYS,
  both,
  type Cube,
  createExplorer,
  type Explorer,
  LIES,
  type NetId,
  type Sight,
  type Way,
} from "../circuit/index.ts";
import type { Id, PinId, PinRef } from "../job/index.ts";
import { MOST_NETS, passing } from "./passing.ts";

/** A load by its part and the pins of the element that it is. */
export interface LoadAt {
  readonly part: Id;
  readonly a: PinId;
  readonly b: PinId;
}

/** What lies behind a fuse or breaker as it is fed from one of its ends. */
export interface FuseReach {
  /** Other fuses and breakers between what feeds it and itself. */
  readonly before: readonly Id[];
  /** Numbers of the wires, up to loads, modules and the next fuse, that a short sends its current over. */
  readonly wires: readonly number[];
  /** Loads that get their current over it alone; those of one list are on whenever the first is. */
  readonly together: readonly (readonly LoadAt[])[];
}

/** A net that current can come to, when, and over which fuses. */
interface At {
  readonly net: NetId;
  /** The pin by which it is entered. */
  readonly pin: PinRef;
  readonly cube: Cube;
  readonly fuses: readonly Id[];
}

/** A reach for each end that something feeds without passing the fuse itself. `fuse`: its element. */
export function fuseReaches(sight: Sight, fuse: Way): readonly FuseReach[] {
  const near = sight.netOf(fuse.from);
  if (near === undefined || near === fuse.far) return [];
  const explorer = createExplorer(sight, null);
  return [
    [near, fuse.from, fuse.far, fuse.to] as const,
    [fuse.far, fuse.to, near, fuse.from] as const,
  ].flatMap(([fed, fedPin, behind, behindPin]): FuseReach[] => {
    const feed = feedOf(explorer, { net: fed, pin: fedPin, cube: ALWAYS, fuses: [] }, fuse);
    if (!feed) return [];
    const start = { net: behind, pin: behindPin, cube: feed.cube, fuses: [] };
    const reached = [...reachedFrom(explorer, start, fuse)];
    return [
      {
        before: feed.fuses,
        wires: reached.flatMap(({ pin }) => sight.soleWires(pin)),
        together: loadsOn(explorer, reached, fuse),
      },
    ];
  });
}

const isFed = (sight: Sight, net: NetId): boolean =>
  sight.source(net) !== null || (sight.lies(net) & LIES.sometimesFed) !== 0;

/** The net that feeds another without passing the fuse, over as few other fuses as can be. */
function feedOf(explorer: Explorer, start: At, fuse: Way): At | null {
  const { sight } = explorer;
  const seen = new Set([start.net]);
  for (let ring = [start]; ring.length > 0; ) {
    const next: At[] = [];
    for (const at of ring) {
      if (isFed(sight, at.net)) return at;
      if (sight.ground(at.net) !== null) continue;
      for (const way of sight.rootward(at.net, "in")) {
        if (way.element === fuse.element || seen.has(way.far)) continue;
        const cube = passing(explorer, way, "in", at.cube);
        if (!cube || seen.size > MOST_NETS) continue;
        seen.add(way.far);
        const isFuse = way.element.law.is === "protection";
        const fuses = isFuse ? [...at.fuses, way.element.part] : at.fuses;
        (isFuse ? next : ring).push({ net: way.far, pin: way.to, cube, fuses });
      }
    }
    ring = next;
  }
  return null;
}

/** Nets that current from behind the fuse comes to without a load or another fuse on the way. */
function* reachedFrom(explorer: Explorer, start: At, fuse: Way): Iterable<At> {
  const { sight } = explorer;
  const seen = new Set([start.net]);
  const queue = [start];
  for (const at of queue) {
    // what is fed by itself is not behind the fuse, and what is ground is past every load
    if (sight.source(at.net) !== null || sight.ground(at.net) !== null) continue;
    yield at;
    for (const way of sight.ways(at.net)) {
      if (way.element === fuse.element || way.element.law.is === "protection") continue;
      if (seen.has(way.far) || seen.size > MOST_NETS) continue;
      const cube = passing(explorer, way, "out", at.cube);
      if (!cube) continue;
      seen.add(way.far);
      queue.push({ net: way.far, pin: way.to, cube, fuses: [] });
    }
  }
}

/** Loads by what switches them: those on the same two nets, or from one net to chassis. */
function loadsOn(
  explorer: Explorer,
  reached: readonly At[],
  fuse: Way,
): readonly (readonly LoadAt[])[] {
  const { sight } = explorer;
  // of batteries in series a part of the volts may lie across a load
  if (sight.hasRaisedMinus() || reached.some(({ net }) => mayBeFed(sight, net))) return [];
  const groups = new Map<string, LoadAt[]>();
  for (const at of reached) {
    const loads = sight.ways(at.net).filter((way) => way.far !== at.net && isLoadFed(way));
    if (loads.length === 0 || mayBeFedOtherwise(explorer, at.net, fuse)) continue;
    for (const way of loads) {
      const back = wayBack(explorer, way, at.cube);
      if (back === null) continue;
      const { part, a, b } = way.element;
      const key = `${at.net} ${back}`;
      const group = groups.get(key);
      if (group) group.push({ part, a, b });
      else groups.set(key, [{ part, a, b }]);
    }
  }
  return [...groups.values()];
}

/** Whether a net could be fed without passing the fuse, whatever that would take; so too where that is too far to see. */
function mayBeFedOtherwise(explorer: Explorer, start: NetId, fuse: Way): boolean {
  const { sight } = explorer;
  const seen = new Set([start]);
  for (const net of seen) {
    if (isFed(sight, net) || seen.size > MOST_NETS) return true;
    if (sight.ground(net) !== null) continue;
    for (const way of sight.rootward(net, "in"))
      if (way.element !== fuse.element && explorer.canPass(way, "in")) seen.add(way.far);
  }
  return false;
}

const mayBeFed = (sight: Sight, net: NetId): boolean =>
  (sight.lies(net) & (LIES.untraced | LIES.chargeSignal | LIES.sometimesFed)) !== 0;

/** A load that works with its near end fed; a diode across it must not conduct then. */
function isLoadFed({ element: { law }, forward }: Way): boolean {
  if (law.is === "led") return forward;
  return law.is === "load" && (law.cathode === null || law.cathode === (forward ? "a" : "b"));
}

/** Where a load's current gets back to the battery: chassis, or a net from which it can; null: nowhere. */
function wayBack(explorer: Explorer, way: Way, cube: Cube): string | null {
  const { sight } = explorer;
  if (sight.ground(way.far) !== null) return sight.leadsBackToBattery(way.far) ? "ground" : null;
  const found = explorer
    .walk(way.far, "out")
    .arrivals.some(
      ({ end, cube: own, step }) =>
        end.is === "ground" && sight.leadsBackToBattery(step.net) && both(cube, own) !== null,
    );
  return found ? String(way.far) : null;
}
