import {
  BLOCKED_OHMS,
  type Branch,
  held,
  nominal,
  type OperatingPoint,
  type Setting,
  transfer,
  transferBeyond,
  type Wiring,
} from "../circuit/index.ts";
import { atEdge, type Edge, type Limits, type Push } from "./limits.ts";

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

/** How each branch must be pushed to move V(red) − V(black) towards `edge`. */
function pushes(
  point: OperatingPoint,
  branches: readonly Branch[],
  seen: Float64Array,
  edge: Edge,
): Pushes {
  const count = branches.length;
  const to = {
    ohms: new Int8Array(count),
    volts: new Int8Array(count),
    slight: new Uint8Array(count),
  };
  const sign = (value: number): Edge => (value * edge >= 0 ? 1 : -1);
  // both halves of a track move together
  const slides = new Map<string, { sum: number; readonly at: number[] }>();
  for (let index = 0; index < count; index++) {
    const { a, b, acts, owner } = branches[index] as Branch;
    const own = point.ohms[index] as number;
    const ohms = acts.is === "junction" ? Math.min(own, BLOCKED_OHMS) : own;
    const probe = ((seen[a] as number) - (seen[b] as number)) / ohms;
    const slope = probe * (point.amps[index] as number);
    to.ohms[index] = sign(slope);
    to.volts[index] = sign(probe);
    if (!Number.isFinite(ohms) || Math.abs(slope * ohms) + Math.abs(probe) < SLIGHT)
      to.slight[index] = 1;
    if (acts.is !== "slide" || owner === null) continue;
    const track = slides.get(owner) ?? { sum: 0, at: [] };
    track.sum += acts.rising ? slope : -slope;
    track.at.push(index);
    slides.set(owner, track);
  }
  for (const { sum, at } of slides.values()) for (const index of at) to.ohms[index] = sign(sum);
  return to;
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

const indices = new WeakMap<readonly Branch[], ReadonlyMap<Branch, number>>();

/** Where each branch of a wiring stands in its list. */
function indexOf(branches: readonly Branch[]): ReadonlyMap<Branch, number> {
  const known = indices.get(branches);
  if (known) return known;
  const found = new Map(branches.map((branch, index) => [branch, index]));
  indices.set(branches, found);
  return found;
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
  const branches = extra.length === 0 ? wiring.branches : [...wiring.branches, ...extra];
  const index = indexOf(wiring.branches);
  const placeOf = (branch: Branch) =>
    index.get(branch) ?? wiring.branches.length + extra.indexOf(branch);
  const start = transfer(middle, red, black);
  if (!start) return null;
  const across = (point: OperatingPoint) =>
    (point.volts[red] as number) - (point.volts[black] as number);
  // what lies beyond a diode that blocks in the middle may count at an edge
  const beyond = middle.blocked.length > 0 ? transferBeyond(middle, red, black) : null;
  const climb = (from: Float64Array, edge: Edge): number => {
    let push = pushes(middle, branches, from, edge);
    let best = across(middle);
    for (let round = 0; round < ROUNDS; round++) {
      const point = held(wiring, states, extra, (branch) => {
        const at = placeOf(branch);
        const own: Push = { ohms: push.ohms[at] as Edge, volts: push.volts[at] as Edge };
        return atEdge(branch, own, limits);
      });
      const volts = across(point);
      best = edge > 0 ? Math.max(best, volts) : Math.min(best, volts);
      const seen = transfer(point, red, black);
      if (!seen) break;
      // the signs can turn on the way to the edge: look again from there
      const next = pushes(point, branches, seen, edge);
      if (!hasTurned(next, push)) break;
      push = next;
    }
    return best;
  };
  const starts = beyond ? [start, beyond] : [start];
  return [
    Math.min(...starts.map((from) => climb(from, -1))),
    Math.max(...starts.map((from) => climb(from, 1))),
  ];
}

/** Lowest and highest ohms between two nodes of a dead circuit; null where they don't hang together. */
export function ohmsBand(
  { wiring, states, limits }: HealthyState,
  red: number,
  black: number,
): readonly [low: number, high: number] | null {
  const ohmsWith = (setting: (branch: Branch) => Setting): number | null => {
    const point = held(wiring, states, [], setting, true);
    const seen = transfer(point, red, black);
    return seen ? (seen[red] as number) - (seen[black] as number) : null;
  };
  // more ohms anywhere never means less between the probes; a wiper is tried at its ends and middle
  const hasWiper = wiring.branches.some(({ acts }) => acts.is === "slide");
  const all = ([-1, 1] as const).flatMap((edge) =>
    (hasWiper ? ([-1, 0, 1] as const) : ([0] as const)).map((wiper) =>
      ohmsWith((branch) => {
        if (branch.acts.is !== "slide") return atEdge(branch, { ohms: edge, volts: 1 }, limits);
        return wiper === 0 ? nominal(branch) : atEdge(branch, { ohms: wiper, volts: 1 }, limits);
      }),
    ),
  );
  const found = all.flatMap((ohms) => (ohms === null ? [] : [ohms]));
  return found.length === all.length ? [Math.min(...found), Math.max(...found)] : null;
}
