import type { Job } from "../job/index.ts";

/** Parts and wires past which a check, or a question to the solver, takes longer than a frame. */
const MANY = 1500;

/** Whether what is asked of the job is to be worked out beside the screen. */
export const isLarge = ({ diagram }: Job, many = MANY): boolean =>
  diagram.parts.length + diagram.wires.length > many;
