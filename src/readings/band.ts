import {
  BLOCKED_OHMS,
  type Branch,
  held,
  type OperatingPoint,
  type Settings,
  transfer,
  transferBeyond,
  type Wiring,
} from "../circuit/index.ts";
import type { Edge, Limits } from "./limits.ts";
import { joinedRanges, type Ranges, rangesOf, rangesOfHeld } from "./ranges.ts";

/**
 * The band of a healthy machine. Every wire, contact, winding, battery and filament may lie anywhere
 * within its own limits; the sign with which each moves the reading (its own current times the
 * current that a source between the probes would send through it) says which limit to take for the
 * lowest and the highest reading. Relays stay as they are.
 */

/** A state of the machine with joints as they really are, and what its parts may lie within. */
export interface HealthyState {
  readonly wiring: Wiring;
  readonly states: ReadonlyMap<string, boolean>;
  readonly limits: Limits;
}

/** Towards which limit each branch must go, by its index. */
interface Pushes {
  readonly ohms: Int8Array;
  readonly volts: Int8Array;
  /** 1 where it hardly matters. */
  readonly slight: Uint8Array;
}

/** Times that the signs are looked at, at most. */
const ROUNDS = 3;
/** Volts that a branch moves the reading by, below which its sign is of no account. */
const SLIGHT = 1e-5;
/** A difference of less than this share of what it is the difference of is what rounding makes of zero. */
const ROUNDING = 1e-13;

/** How much more `a` has than `b`; 0 where that is rounding, whose sign would turn at random. */
function difference(values: Float64Array, a: number, b: number): number {
  const [one, other] = [values[a] as number, values[b] as number];
  const found = one - other;
  return Math.abs(found) <= ROUNDING * (Math.abs(one) + Math.abs(other)) ? 0 : found;
}

/** How each branch must be pushed to move V(red) − V(black) towards `edge`. */
function pushes(point: OperatingPoint, ranges: Ranges, seen: Float64Array, edge: Edge): Pushes {
  const { a, b, junction, slides } = ranges;
  const count = a.length;
  const to = {
    ohms: new Int8Array(count),
    volts: new Int8Array(count),
    slight: new Uint8Array(count),
  };
  const slopeOf = (index: number) => probeOf(index) * (point.amps[index] as number);
  const ohmsOf = (index: number) => {
    const own = point.ohms[index] as number;
    return junction[index] === 1 ? Math.min(own, BLOCKED_OHMS) : own;
  };
  const probeOf = (index: number) =>
    difference(seen, a[index] as number, b[index] as number) / ohmsOf(index);
  for (let index = 0; index < count; index++) {
    const ohms = ohmsOf(index);
    const isOpen = ohms === Number.POSITIVE_INFINITY;
    const probe = isOpen ? 0 : probeOf(index);
    // amps that are rounding's through few ohms may be many
    const drop = (point.amps[index] as number) * (point.ohms[index] as number);
    const volts = Math.abs(point.volts[a[index] as number] as number);
    const slope = Math.abs(drop) <= ROUNDING * volts ? 0 : slopeOf(index);
    const moves = isOpen ? 0 : slope * ohms;
    to.ohms[index] = moves * edge >= 0 ? 1 : -1;
    to.volts[index] = probe * edge >= 0 ? 1 : -1;
    if (Math.abs(moves) + Math.abs(probe) < SLIGHT) to.slight[index] = 1;
  }
  // both halves of a track move together
  const tracks = new Map<string, { sum: number; readonly at: number[] }>();
  for (const { index, owner, rising } of slides) {
    if (owner === null) continue;
    const track = tracks.get(owner) ?? { sum: 0, at: [] };
    track.sum += rising ? slopeOf(index) : -slopeOf(index);
    track.at.push(index);
    tracks.set(owner, track);
  }
  for (const { sum, at } of tracks.values())
    for (const index of at) to.ohms[index] = sum * edge >= 0 ? 1 : -1;
  return to;
}

/** The numbers of all branches where they are pushed to. */
function settingsAt({ low, high, slides }: Ranges, push: Pushes, track: 0 | 1): Settings {
  const count = push.ohms.length;
  const ohms = new Float64Array(count);
  const cold = new Float64Array(count);
  const volts = new Float64Array(count);
  for (let index = 0; index < count; index++) {
    const side = (push.ohms[index] as number) > 0 ? high : low;
    ohms[index] = side.ohms[index] as number;
    cold[index] = side.cold[index] as number;
    volts[index] = ((push.volts[index] as number) > 0 ? high : low).volts[index] as number;
  }
  for (const { index, spread } of slides) {
    if (!spread) continue;
    ohms[index] = (ohms[index] as number) * spread[track];
    cold[index] = ohms[index] as number;
  }
  return { ohms, cold, volts };
}

/** Whether a sign that matters has turned. */
function hasTurned(next: Pushes, before: Pushes): boolean {
  for (let index = 0; index < next.ohms.length; index++) {
    if (next.slight[index]) continue;
    if (next.ohms[index] !== before.ohms[index] || next.volts[index] !== before.volts[index])
      return true;
  }
  return false;
}

/** Lowest and highest V(red) − V(black); null where the two don't hang together. */
export function voltsBand(
  { wiring, states, limits }: HealthyState,
  extra: readonly Branch[],
  red: number,
  black: number,
  /** The nominal point of this very state, what is held between the probes included. */
  middle: OperatingPoint,
): readonly [low: number, high: number] | null {
  const start = transfer(middle, red, black);
  if (!start) return null;
  const own = rangesOf(wiring, limits);
  const ranges = extra.length === 0 ? own : joinedRanges(own, rangesOfHeld(extra, limits));
  const across = (point: OperatingPoint) =>
    (point.volts[red] as number) - (point.volts[black] as number);
  // what lies beyond a diode that blocks in the middle may count at an edge
  const beyond = middle.blocked.length > 0 ? transferBeyond(middle, red, black) : null;
  const climb = (from: Float64Array, edge: Edge, track: 0 | 1): number => {
    let push = pushes(middle, ranges, from, edge);
    let best = across(middle);
    for (let round = 0; round < ROUNDS; round++) {
      const point = held(wiring, states, extra, settingsAt(ranges, push, track));
      const volts = across(point);
      best = edge > 0 ? Math.max(best, volts) : Math.min(best, volts);
      const seen = transfer(point, red, black);
      if (!seen) break;
      // the signs can turn on the way to the edge: look again from there
      const next = pushes(point, ranges, seen, edge);
      if (!hasTurned(next, push)) break;
      push = next;
    }
    return best;
  };
  const starts = beyond ? [start, beyond] : [start];
  // a track of which nobody has said the ohms is tried at its least and its most
  const tracks = ranges.slides.some(({ spread }) => spread) ? ([0, 1] as const) : ([0] as const);
  const climbs = (edge: Edge) =>
    starts.flatMap((from) => tracks.map((track) => climb(from, edge, track)));
  return [Math.min(...climbs(-1)), Math.max(...climbs(1))];
}

/** Lowest and highest ohms between two nodes of a dead circuit; null where they don't hang together. */
export function ohmsBand(
  { wiring, states, limits }: HealthyState,
  red: number,
  black: number,
): readonly [low: number, high: number] | null {
  const ranges = rangesOf(wiring, limits);
  const { low, high, slides } = ranges;
  const ohmsAt = (edge: Edge, wiper: Edge | 0): number | null => {
    const { ohms, cold, volts } = edge > 0 ? high : low;
    const own = { ohms: ohms.slice(), cold: cold.slice(), volts };
    for (const { index, spread } of slides) {
      const at = (wiper > 0 ? high : low).ohms[index] as number;
      // one end is no ohms, the other the whole track
      const track = Math.max(low.ohms[index] as number, high.ohms[index] as number);
      own.ohms[index] = (wiper === 0 ? track / 2 : at) * (spread?.[edge > 0 ? 1 : 0] ?? 1);
      own.cold[index] = own.ohms[index] as number;
    }
    const point = held(wiring, states, [], own, true);
    const seen = transfer(point, red, black);
    return seen ? (seen[red] as number) - (seen[black] as number) : null;
  };
  // more ohms anywhere never means less between the probes; a wiper is tried at its ends and middle
  const wipers: readonly (Edge | 0)[] = slides.length > 0 ? [-1, 0, 1] : [0];
  const all = ([-1, 1] as const).flatMap((edge) => wipers.map((wiper) => ohmsAt(edge, wiper)));
  const found = all.flatMap((ohms) => (ohms === null ? [] : [ohms]));
  return found.length === all.length ? [Math.min(...found), Math.max(...found)] : null;
}
