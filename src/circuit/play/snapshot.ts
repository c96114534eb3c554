import type { Id } from "../../job/index.ts";
import type { OperatingPoint, Wiring } from "../solve/index.ts";
import { lineAmps } from "./flows.ts";
import type { Layout } from "./layout.ts";
import { FLOATING, lineStates, type Unsure } from "./line-states.ts";
import type { LiveState, PointState, WireFlow } from "./live-state.ts";

/** How every wire, pin and cavity is in a settled state. */
export function pointStates(
  wiring: Wiring,
  { graph, ends, pinNodes, wireNodes, cavityNodes, halves }: Layout,
  point: OperatingPoint,
  unsure: Unsure,
): Pick<LiveState, "wires" | "pins" | "cavities"> {
  const nodes = lineStates(wiring, point, unsure);
  const at = (node: number | undefined): PointState => nodes[node ?? -1] ?? FLOATING;
  const along = lineAmps(wiring.branches, graph, ends, point);

  const wires: Record<Id, WireFlow> = {};
  graph.wires.forEach(({ id, line }, index) => {
    const { state, volts } = at(wireNodes[index]);
    const branch = ends.ofWire[index] as number;
    const amps = branch >= 0 ? point.amps[branch] : along[line];
    // what is nothing has no direction either
    wires[id] = { state, volts, amps: (amps ?? 0) + 0 };
  });
  const pins: Record<string, PointState> = {};
  graph.pins.forEach((ref, pin) => {
    const own = halves.get(pin);
    pins[ref] = own ? worstOf(own.map((wire) => at(wireNodes[wire]))) : at(pinNodes[pin]);
  });
  const cavities: Record<string, PointState> = {};
  for (const [ref, node] of cavityNodes) cavities[ref] = at(node);
  return { wires, pins, cavities };
}

const MOST_TO_HEED: readonly PointState["state"][] = [
  "live",
  "live-through-load",
  "between",
  "unknown",
  "ground-through-load",
  "ground",
  "floating",
];

/** Of the halves of a joint that is open: the one to heed most. */
const worstOf = (halves: readonly PointState[]): PointState =>
  halves.reduce((worst, one) =>
    MOST_TO_HEED.indexOf(one.state) < MOST_TO_HEED.indexOf(worst.state) ? one : worst,
  );
