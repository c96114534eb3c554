import { type Box, boxContains, growBox, type Point } from "../../base/index.ts";
import type { FollowedPage } from "../lines/follow.ts";
import type { GraphNode, GraphRun } from "./net-graph.ts";

/** What is known of the ends of lines from where they lie. */
export interface LineEnds {
  /** Whether an end hangs on something, so that it is a line's however short. */
  readonly isHeld: (node: GraphNode) => boolean;
  readonly isAtPart: (run: GraphRun) => boolean;
  /** Where a line in the open really ends, by its last place and the way it runs there. */
  readonly endOf: (node: GraphNode, at: Point, onward: Point) => Point;
}

/** In line widths: lines are followed up to so far from a part's box, its outline and a little more. */
const RIM = 2.5;
/** Thinning eats about half a line's width off its end. */
const EATEN = 0.5;

/** All in pixels of the prepared page. */
export function lineEnds(
  parts: readonly Box[],
  { skeleton, stops }: FollowedPage,
  lineWidth: number,
): LineEnds {
  const partAt = (at: Point) =>
    parts.find((box) => boxContains(growBox(box, RIM * lineWidth + 2), at)) ?? null;
  const isStop = ({ at: [x, y] }: GraphNode) => stops.has(y * skeleton.width + x);
  return {
    isHeld: (node) => node.terminals.length > 0 || isStop(node) || partAt(node.at) !== null,
    isAtPart: ({ from, to }) => [from, to].some((node) => node.isFree && partAt(node.at) !== null),
    endOf(node, at, onward) {
      if (isStop(node)) return at;
      const box = partAt(at);
      const reach = box && untilBox(at, onward, box);
      const further = reach !== null && reach <= 2 * RIM * lineWidth ? reach : EATEN * lineWidth;
      return [
        onPage(at[0] + further * onward[0], skeleton.width),
        onPage(at[1] + further * onward[1], skeleton.height),
      ];
    },
  };
}

/** A column or row of so many, from rim to rim: a line that is cut off there goes no further. */
const onPage = (at: number, count: number): number => Math.max(-0.5, Math.min(count - 0.5, at));

/** Pixels from a point outside a box along a way to its edge; null where the way misses it. */
function untilBox(
  [x, y]: Point,
  [dx, dy]: Point,
  { left, top, right, bottom }: Box,
): number | null {
  const [fromX, toX] = within(x, dx, left, right);
  const [fromY, toY] = within(y, dy, top, bottom);
  const [from, to] = [Math.max(fromX, fromY), Math.min(toX, toY)];
  return from >= 0 && from <= to ? from : null;
}

/** How far along a way one coordinate enters a range and leaves it. */
function within(at: number, step: number, low: number, high: number): [number, number] {
  if (step === 0)
    return at >= low && at <= high
      ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
      : [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const [a, b] = [(low - at) / step, (high - at) / step];
  return a < b ? [a, b] : [b, a];
}
