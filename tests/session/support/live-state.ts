import type { LiveState } from "../../../src/circuit/index.ts";

/** A machine of nothing, at rest. */
export const STILL: LiveState = {
  when: {},
  seconds: 0,
  nextIn: null,
  steps: [],
  events: [],
  wires: {},
  pins: {},
  cavities: {},
  parts: {},
  oscillating: [],
  doubts: [],
  refused: null,
};
