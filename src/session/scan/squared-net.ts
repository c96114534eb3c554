import type { Point } from "../../base/index.ts";
import type { NetNode, NetRun } from "../../scan/index.ts";
import { withoutIdleCorners } from "../diagram/polyline.ts";
import { NameGroups } from "./name-groups.ts";

/** On a scan that lies a degree or so askew a line still counts as level. */
const ASKEW = 0.03;
/** Pixels by which the ends of a level line may differ whatever its length. */
const UNEVEN = 1.5;

const isFlat = (along: number, across: number) =>
  Math.abs(along) > Math.abs(across) &&
  Math.abs(across) <= Math.max(UNEVEN, ASKEW * Math.abs(along));

/**
 * The lines of a net drawn square: what is level or upright on the picture is exactly so, on whole
 * pixels, and ends at the very places of `fixed`, by number of node. Corners give way for that; joints
 * and free ends by no more than `give` pixels: a line to a fixed place further out of line has a step in
 * its middle. Points of each run, in its order.
 */
export function squaredRuns(
  nodes: readonly NetNode[],
  runs: readonly NetRun[],
  fixed: ReadonlyMap<number, Point>,
  give: number,
): readonly (readonly Point[])[] {
  const seen = new Map<string, Point>();
  const held = new Map<string, Point>();
  const ties = [new NameGroups(), new NameGroups()] as const;
  const named = runs.map(({ from, to, points }, run) => {
    const names = points.map((_, place) => `${run}.${place}`);
    names[0] = nodeName(from);
    names[names.length - 1] = nodeName(to);
    names.forEach((name, place) => {
      seen.set(name, points[place] as Point);
    });
    return names;
  });
  for (const [node, at] of fixed) held.set(nodeName(node), at);
  nodes.forEach(({ at }, node) => {
    if (seen.has(nodeName(node))) seen.set(nodeName(node), at);
  });
  const steps = (names: readonly string[]) =>
    names.slice(1).map((name, place) => [names[place] as string, name] as const);
  const wayOf = (a: string, b: string): "level" | "upright" | null => {
    const [[ax, ay], [bx, by]] = [seen.get(a) as Point, seen.get(b) as Point];
    if (isFlat(bx - ax, by - ay)) return "level";
    return isFlat(by - ay, bx - ax) ? "upright" : null;
  };
  for (const [a, b] of named.flatMap(steps)) {
    const way = wayOf(a, b);
    if (way === "level") ties[1].join(a, b);
    if (way === "upright") ties[0].join(a, b);
  }
  const values = ([0, 1] as const).map((axis) => valuesOf(axis, ties[axis], seen, held, give));
  const placeOf = (name: string): Point =>
    held.get(name) ?? [valueIn(values[0], ties[0], name), valueIn(values[1], ties[1], name)];
  return named.map((names) => {
    const points: Point[] = [placeOf(names[0] as string)];
    for (const [a, b] of steps(names)) {
      const [from, to] = [placeOf(a), placeOf(b)];
      points.push(...stepBetween(from, to, wayOf(a, b)), to);
    }
    const [start, end] = [points[0] as Point, points.at(-1) as Point];
    return [start, ...withoutIdleCorners(start, points.slice(1, -1), end), end];
  });
}

const nodeName = (node: number): string => `node ${node}`;
const isNode = (name: string): boolean => name.startsWith("node ");

type Values = ReadonlyMap<string, number>;

const valueIn = (values: Values | undefined, ties: NameGroups, name: string): number =>
  values?.get(ties.of(name)) as number;

/** Of each line of points where it lies: at a fixed place on it, where its joints can give way so far, else in their middle. */
function valuesOf(
  axis: 0 | 1,
  ties: NameGroups,
  seen: ReadonlyMap<string, Point>,
  held: ReadonlyMap<string, Point>,
  give: number,
): Values {
  const sums = new Map<string, { sum: number; count: number; held: number[]; joints: number }>();
  for (const [name, at] of seen) {
    const root = ties.of(name);
    const line = sums.get(root) ?? { sum: 0, count: 0, held: [], joints: 0 };
    sums.set(root, line);
    line.sum += at[axis];
    line.count++;
    const place = held.get(name);
    if (place) line.held.push(place[axis]);
    else if (isNode(name)) line.joints++;
  }
  return new Map(
    [...sums].map(([root, { sum, count, held: places, joints }]) => {
      const middle = sum / count;
      const off = (place: number) => Math.abs(place - middle);
      const nearest = places.toSorted((a, b) => off(a) - off(b))[0];
      const isKept = nearest !== undefined && (joints === 0 || off(nearest) <= give);
      return [root, isKept ? nearest : Math.round(middle)];
    }),
  );
}

/** The corners of a step where a line that was level or upright has ends too far out of line to stay one. */
function stepBetween(a: Point, b: Point, way: "level" | "upright" | null): Point[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  if (way === "level" && dy !== 0 && !isFlat(dx, dy)) {
    const x = Math.round((a[0] + b[0]) / 2);
    return [
      [x, a[1]],
      [x, b[1]],
    ];
  }
  if (way === "upright" && dx !== 0 && !isFlat(dy, dx)) {
    const y = Math.round((a[1] + b[1]) / 2);
    return [
      [a[0], y],
      [b[0], y],
    ];
  }
  return [];
}
