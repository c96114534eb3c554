import type { Plan } from "../drawing/plan.ts";
import { PARTS } from "./parts.ts";
import { WIRES } from "./wires.ts";

/** A4 across at 300 dpi. */
export const SWEEPER_PLAN: Plan = { width: 3508, height: 2480, parts: PARTS, wires: WIRES };
