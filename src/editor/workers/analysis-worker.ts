import { expose } from "comlink";
import { createAnalysisServer } from "../../session/index.ts";

/** Checks one job and answers for it in a thread of its own. */
const analysisWorker = createAnalysisServer();

export type AnalysisWorker = typeof analysisWorker;

expose(analysisWorker);
