export type { LineState, LiveState, PartState, PointState, WireFlow } from "./live-state.ts";
export type { Play } from "./play.ts";
export type { PlayEvent } from "./step.ts";
