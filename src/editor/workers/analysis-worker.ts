import { expose } from "comlink";
import { createAnalysisServer } from "../../session/index.ts";
import { createTaker } from "./hand-over.ts";

const server = createAnalysisServer();
const { taken, ...taker } = createTaker();

/** Checks one job and answers for it in a thread of its own. */
const analysisWorker = {
  ...server,
  ...taker,
  /** With the job that was taken piece by piece. */
  begin: () => server.begin(taken()),
};

export type AnalysisWorker = typeof analysisWorker;

expose(analysisWorker);
