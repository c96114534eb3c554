export * from "./keep-operating.ts";
export * from "./live-port.ts";
export * from "./news.ts";
export * from "./operables.ts";
export * from "./operate.ts";
export * from "./operate-state.ts";
export * from "./play-words.ts";
export * from "./readout.ts";
export {
  beginReplay,
  endReplay,
  keepRecording,
  nextReplayStep,
  recordingsOf,
  removeRecording,
  renameRecording,
  replayTo,
  runReplay,
  stepsToKeep,
} from "./recordings.ts";
