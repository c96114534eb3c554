/**
 * How current spreads over lines of no resistance. The solver makes one node of everything that
 * wires join; which wire carries what follows from what each pin takes out. Where there is but one
 * way this is exact; side by side, lines share as equal resistances would.
 *
 * Ends are peeled off one after another, each line carrying what lies behind it; what is left are
 * loops, solved by conjugate gradients on unit conductances.
 */
import { addTo } from "../../base/index.ts";

/** Amps along each line from its `a` to its `b`, for the amps that leave the net at each point. */
export type NetFlows = (leaving: Float64Array) => Float64Array;

/** `a` and `b`: the points that each line joins. What is common to all flows is worked out once. */
export function planNetFlows(pointCount: number, a: Int32Array, b: Int32Array): NetFlows {
  const { peeled, towards, left } = peel(pointCount, a, b);
  const loops = left.length > 0 ? planLoops(left, a, b) : null;
  return (leaving) => {
    const taken = Float64Array.from(leaving);
    const amps = new Float64Array(a.length);
    for (let n = 0; n < peeled.length; n++) {
      const line = peeled[n] as number;
      const to = towards[n] as number;
      const forward = (b[line] as number) !== to;
      const end = (forward ? b[line] : a[line]) as number;
      const own = taken[end] as number;
      amps[line] = forward ? own : -own;
      taken[to] = (taken[to] as number) + own;
    }
    loops?.(taken, amps);
    return amps;
  };
}

/** Lines in the order in which they become a point's only one, each with the point it leads to. */
function peel(pointCount: number, a: Int32Array, b: Int32Array) {
  const degree = new Int32Array(pointCount);
  for (let line = 0; line < a.length; line++) {
    if (a[line] === b[line]) continue;
    degree[a[line] as number] = (degree[a[line] as number] as number) + 1;
    degree[b[line] as number] = (degree[b[line] as number] as number) + 1;
  }
  const start = new Int32Array(pointCount + 1);
  for (let point = 0; point < pointCount; point++)
    start[point + 1] = (start[point] as number) + (degree[point] as number);
  const lines = new Int32Array(start[pointCount] as number);
  const filled = start.slice();
  for (let line = 0; line < a.length; line++) {
    if (a[line] === b[line]) continue;
    for (const point of [a[line] as number, b[line] as number]) {
      lines[filled[point] as number] = line;
      filled[point] = (filled[point] as number) + 1;
    }
  }
  const gone = new Uint8Array(a.length);
  const peeled: number[] = [];
  const towards: number[] = [];
  const queue: number[] = [];
  for (let point = 0; point < pointCount; point++) if (degree[point] === 1) queue.push(point);
  for (const end of queue) {
    if (degree[end] !== 1) continue;
    for (let at = start[end] as number; at < (start[end + 1] as number); at++) {
      const line = lines[at] as number;
      if (gone[line]) continue;
      gone[line] = 1;
      const to = (a[line] === end ? b[line] : a[line]) as number;
      peeled.push(line);
      towards.push(to);
      degree[end] = 0;
      degree[to] = (degree[to] as number) - 1;
      if (degree[to] === 1) queue.push(to);
    }
  }
  const left: number[] = [];
  for (let line = 0; line < a.length; line++)
    if (!gone[line] && a[line] !== b[line]) left.push(line);
  return { peeled: Int32Array.from(peeled), towards: Int32Array.from(towards), left };
}

/** The lines of one connected group of loops, its points numbered from 0. */
interface Loop {
  readonly lines: readonly number[];
  readonly points: readonly number[];
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly degree: Float64Array;
}

function planLoops(left: readonly number[], a: Int32Array, b: Int32Array) {
  const loops = groupLoops(left, a, b);
  return (taken: Float64Array, amps: Float64Array) => {
    for (const loop of loops) {
      const drawn = Float64Array.from(loop.points, (point) => -(taken[point] as number));
      const mean = drawn.reduce((sum, one) => sum + one, 0) / drawn.length;
      const volts = solveLoop(
        loop,
        drawn.map((one) => one - mean),
      );
      loop.lines.forEach((line, n) => {
        amps[line] =
          (volts[loop.from[n] as number] as number) - (volts[loop.to[n] as number] as number);
      });
    }
  };
}

function groupLoops(left: readonly number[], a: Int32Array, b: Int32Array): readonly Loop[] {
  const touching = new Map<number, number[]>();
  for (const line of left) {
    addTo(touching, a[line] as number, line);
    addTo(touching, b[line] as number, line);
  }
  const numberOf = new Map<number, number>();
  const loops: Loop[] = [];
  for (const first of touching.keys()) {
    if (numberOf.has(first)) continue;
    const points = [first];
    numberOf.set(first, 0);
    const lines: number[] = [];
    for (const point of points) {
      for (const line of touching.get(point) ?? []) {
        if (a[line] === point) lines.push(line);
        const other = (a[line] === point ? b[line] : a[line]) as number;
        if (numberOf.has(other)) continue;
        numberOf.set(other, points.length);
        points.push(other);
      }
    }
    const place = (point: number | undefined) => numberOf.get(point as number) as number;
    loops.push({
      lines,
      points,
      from: Int32Array.from(lines, (line) => place(a[line])),
      to: Int32Array.from(lines, (line) => place(b[line])),
      degree: Float64Array.from(points, (point) => touching.get(point)?.length ?? 0),
    });
  }
  return loops;
}

/** Volts at each point for the amps pushed in, which sum to nothing. */
function solveLoop({ from, to, degree }: Loop, pushed: Float64Array): Float64Array {
  const count = pushed.length;
  const volts = new Float64Array(count);
  const residue = Float64Array.from(pushed);
  const way = new Float64Array(count);
  const met = new Float64Array(count);
  let strength = 0;
  const enough = 1e-26 * pushed.reduce((sum, one) => sum + one * one, 0);
  for (let round = 0; round < 4 * count + 20; round++) {
    let size = 0;
    let next = 0;
    for (let i = 0; i < count; i++) {
      const own = residue[i] as number;
      size += own * own;
      next += (own * own) / (degree[i] as number);
    }
    if (size <= enough) break;
    const turn = strength === 0 ? 0 : next / strength;
    strength = next;
    for (let i = 0; i < count; i++) {
      way[i] = (residue[i] as number) / (degree[i] as number) + turn * (way[i] as number);
      met[i] = (degree[i] as number) * (way[i] as number);
    }
    for (let line = 0; line < from.length; line++) {
      const f = from[line] as number;
      const t = to[line] as number;
      met[f] = (met[f] as number) - (way[t] as number);
      met[t] = (met[t] as number) - (way[f] as number);
    }
    let work = 0;
    for (let i = 0; i < count; i++) work += (way[i] as number) * (met[i] as number);
    if (work <= 0) break;
    const far = strength / work;
    for (let i = 0; i < count; i++) {
      volts[i] = (volts[i] as number) + far * (way[i] as number);
      residue[i] = (residue[i] as number) - far * (met[i] as number);
    }
  }
  return volts;
}
