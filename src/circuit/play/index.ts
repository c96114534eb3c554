export type { LineState, LiveState, PartState, PointState, WireFlow } from "./live-state.ts";
export { MAY_ACT } from "./may-act.ts";
export { createPlay, type Play } from "./play.ts";
export type { PlayEvent } from "./play-event.ts";
