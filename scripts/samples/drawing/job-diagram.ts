import type { Job, Wire } from "../../../src/job/index.ts";
import { lineOf, type Plan, type PlannedWire } from "./plan.ts";
import { partOnScan, roundedPoint, type Skew, toScan } from "./skew.ts";

/** The plan as somebody traces it over the scan. */
export function tracedOver(plan: Plan, skew: Skew): Pick<Job["diagram"], "parts" | "wires"> {
  return {
    parts: plan.parts.map(({ part }) => partOnScan(skew, part)),
    wires: plan.wires.map((wire) => tracedWire(plan, skew, wire)),
  };
}

function tracedWire(plan: Plan, skew: Skew, planned: PlannedWire): Wire {
  const { legs: _l, printOn: _o, printAt: _a, printBeside: _b, ...wire } = planned;
  const path = lineOf(plan, planned)
    .slice(1, -1)
    .map((corner) => roundedPoint(toScan(skew, corner)));
  return path.length > 0 ? { ...wire, path } : wire;
}
