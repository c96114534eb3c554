import { Groups } from "../../base/index.ts";
import type { Branch, OperatingPoint, Wiring } from "../solve/index.ts";
import type { LineState, PointState } from "./live-state.ts";
import { type Rail, railsOf } from "./rails.ts";

/** What nobody can tell of a state. */
export interface Unsure {
  /** By node: 1 where its volts depend on something that nobody has said. */
  readonly isUnknown: Uint8Array;
  /** The state with every contact open of which nobody can tell whether it is closed. */
  readonly open: OperatingPoint;
}

export const FLOATING: PointState = { state: "floating", volts: null };

/** How every node lies. */
export function lineStates(
  wiring: Wiring,
  point: OperatingPoint,
  { isUnknown, open }: Unsure,
): readonly PointState[] {
  const { grounds, nodeCount, systemVoltage } = wiring;
  const { piece } = point.factored;
  // chassis is what volts count from; battery minus where nothing joins the two
  const chassis = grounds.at(-1) as number;
  const minus = grounds[0] as number;
  const railOf = railsOf(wiring, point);
  const sureRailOf = open === point ? railOf : railsOf(wiring, open);
  const loadStateOf = beyondLoads(wiring, point, railOf);

  const states: PointState[] = [];
  for (let node = 0; node < nodeCount; node++) {
    if (isUnknown[node]) {
      // what is joined to a pole for sure is so whatever its volts are
      const rail = sureRailOf(node);
      states.push({ state: rail === null || rail === "both" ? "unknown" : rail, volts: null });
      continue;
    }
    const own = piece[node];
    const reference = own === piece[chassis] ? chassis : own === piece[minus] ? minus : null;
    if (reference === null) {
      states.push(FLOATING);
      continue;
    }
    const volts = (point.volts[node] as number) - (point.volts[reference] as number);
    const rail = railOf(node);
    // in a dead short one side wins
    const winner: Rail = Math.abs(volts) > systemVoltage / 2 ? "live" : "ground";
    const state = rail === null ? loadStateOf(node) : rail === "both" ? winner : rail;
    states.push({ state, volts });
  }
  return states;
}

/** How nodes lie that hang together, and with the rails, by loads alone. */
function beyondLoads(
  { branches, nodeCount }: Wiring,
  { ohms }: OperatingPoint,
  railOf: (node: number) => Rail | null,
): (node: number) => LineState {
  const islands = new Groups(nodeCount);
  const isFed = new Uint8Array(nodeCount);
  const isGrounded = new Uint8Array(nodeCount);
  const across: Branch[] = [];
  branches.forEach((branch, index) => {
    if (!Number.isFinite(ohms[index])) return;
    const ends = [railOf(branch.a), railOf(branch.b)];
    const isSource = branch.acts.is === "source";
    if (ends[0] === null && ends[1] === null && !isSource) islands.join(branch.a, branch.b);
    else if (ends[0] === null || ends[1] === null) across.push(branch);
  });
  for (const { a, b, acts } of across) {
    for (const [own, other] of [
      [a, b],
      [b, a],
    ] as const) {
      if (railOf(own) !== null) continue;
      const island = islands.of(own);
      // what a pull-up is fed by is a source, whatever its other end stands on
      if (acts.is === "source" || railOf(other) === "live") isFed[island] = 1;
      else if (railOf(other) !== null) isGrounded[island] = 1;
    }
  }
  return (node) => {
    const island = islands.of(node);
    if (!isFed[island]) return "ground-through-load";
    return isGrounded[island] ? "between" : "live-through-load";
  };
}
