export { CELL } from "./cells.ts";
export { HARD, LIES } from "./lies.ts";
export { isElectricallySame } from "./likeness.ts";
export { LinkedNetwork } from "./linked-network.ts";
export type { Member } from "./member.ts";
export type { NetTerminal } from "./net-objects.ts";
export { ask, askAgain, type Kept, type Sight, stillHolds } from "./sight.ts";
