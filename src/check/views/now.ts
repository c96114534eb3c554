import type { Circuit, LinkedNetwork } from "../../circuit/index.ts";
import type { Job, Machine } from "../../job/index.ts";

/** The job as it is now, with the circuit of one machine joined up. */
export interface Now {
  readonly job: Job;
  readonly machine: Machine;
  readonly circuit: Circuit;
  readonly network: LinkedNetwork;
}
