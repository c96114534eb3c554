export type { Acts, Branch, Decider, Draw, Unknown } from "./branch.ts";
export type { Doubts } from "./doubts.ts";
export type { Fault } from "./fault.ts";
export { SHORT_OHMS } from "./fault-branches.ts";
export {
  between,
  decide,
  follow,
  HIGH_LEVEL,
  held,
  isActive,
  LOW_LEVEL,
  type Settled,
} from "./follow.ts";
export { influenceOf, influences } from "./influence.ts";
export { type Loosened, loosened } from "./loosened.ts";
export { type Conditions, FUSE_TIMES } from "./lower.ts";
export { joinedSettings, type Settings, settingsOf } from "./net.ts";
export { nominal, type OperatingPoint, type Setting } from "./operating-point.ts";
export {
  type Bench,
  type Between,
  type ElementFlow,
  heldBetween,
  type Solution,
  setUp,
  solveCircuit,
} from "./solve-circuit.ts";
export { type Conductor, type Factored, factor } from "./star-mesh.ts";
export { BLOCKED_OHMS, transfer, transferBeyond } from "./transfer.ts";
export { wireOhms } from "./wire-ohms.ts";
export { type Probed, type Side, type Wiring, wire } from "./wiring.ts";
