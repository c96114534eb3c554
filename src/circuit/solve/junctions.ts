import { addTo, Groups } from "../../base/index.ts";
import { LEAST_OHMS, NO_AMPS } from "./operating-point.ts";
import type { WorkedCircuit } from "./worked-circuit.ts";

/** Volts by which a junction must be driven beyond its own before it is closed. */
const DRIVEN = 1e-9;

/**
 * Opens junctions that would conduct backwards, closes open ones that have their voltage: all of
 * them at once, or when that goes on and on the first alone, which comes to an end (Murty's least
 * index rule for complementary pivoting).
 */
export function turnJunctions(
  circuit: WorkedCircuit,
  junctions: readonly number[],
  oneOnly: boolean,
): boolean {
  let turned = false;
  const wrong = junctions.filter((index) => {
    if (circuit.conducts(index)) return -circuit.amps(index) - NO_AMPS > 0;
    const volts = circuit.settings.volts[index] as number;
    return circuit.across(index) - volts - DRIVEN > 0 && circuit.together(index);
  });
  for (const index of oneOnly ? wrong.slice(0, 1) : wrong) {
    const own = circuit.settings.ohms[index] as number;
    circuit.set(
      index,
      circuit.conducts(index) ? Number.POSITIVE_INFINITY : Math.max(LEAST_OHMS, own),
    );
    turned = true;
  }
  return turned;
}

/** An open junction between two pieces that nothing else ties. */
interface Parted {
  readonly index: number;
  /** Pieces of `a` and `b`. */
  readonly from: number;
  readonly to: number;
  /** Volts by which `from` may still rise over `to` before it conducts. */
  readonly room: number;
}

/**
 * Closes open junctions between pieces that float against one another where no volts of those
 * pieces keep all of them open, as two diodes in a row that a switch has just fed: what lies
 * between the two hangs on nothing. Such junctions form a ring whose rooms add up to less than
 * nothing (a cycle of negative length, Bellman and Ford), and a current flows all round it.
 */
export function closeDrivenRings(circuit: WorkedCircuit, junctions: readonly number[]): boolean {
  const open = junctions.filter((index) => !circuit.conducts(index) && !circuit.together(index));
  if (open.length === 0) return false;
  const parted = open.map((index): Parted => {
    const [from, to] = circuit.piecesOf(index);
    const own = circuit.settings.volts[index] as number;
    return { index, from, to, room: own - circuit.across(index) };
  });
  if (parted.every(({ room }) => room >= -DRIVEN)) return false;
  let closed = false;
  for (const group of apartFromHub(parted)) {
    for (const { index } of drivenRing(group)) {
      circuit.set(index, Math.max(LEAST_OHMS, circuit.settings.ohms[index] as number));
      closed = true;
    }
  }
  return closed;
}

/** Those that have nothing to do with one another but the piece where most of them end, as ground. */
function apartFromHub(parted: readonly Parted[]): Iterable<readonly Parted[]> {
  const ends = new Map<number, number>();
  for (const { from, to } of parted)
    for (const piece of [from, to]) ends.set(piece, (ends.get(piece) ?? 0) + 1);
  const [hub] = [...ends].reduce((most, one) => (one[1] > most[1] ? one : most));
  const groups = new Groups(Math.max(...ends.keys()) + 1);
  for (const { from, to } of parted) if (from !== hub && to !== hub) groups.join(from, to);
  const found = new Map<number, Parted[]>();
  for (const one of parted) addTo(found, groups.of(one.from === hub ? one.to : one.from), one);
  return found.values();
}

/** One ring that is driven; empty where there is none. */
function drivenRing(parted: readonly Parted[]): Iterable<Parted> {
  /** Volts to which a piece may rise at most, and the junction that says so. */
  const most = new Map<number, number>();
  const by = new Map<number, Parted>();
  const pieces = new Set(parted.flatMap(({ from, to }) => [from, to])).size;
  let last: number | null = null;
  for (let pass = 0; pass <= pieces; pass++) {
    last = null;
    for (const one of parted) {
      const limit = (most.get(one.to) ?? 0) + one.room;
      if ((most.get(one.from) ?? 0) <= limit + DRIVEN) continue;
      most.set(one.from, limit);
      by.set(one.from, one);
      last = one.from;
    }
    if (last === null) return [];
  }
  // far enough back along what limits it, every way is in the ring
  let one = by.get(last as number);
  for (let n = 0; n < pieces; n++) one = one && by.get(one.to);
  const ring = new Set<Parted>();
  for (; one && !ring.has(one); one = by.get(one.to)) ring.add(one);
  return ring;
}
