import { type Remote, wrap } from "comlink";
import type { AnalysisPort, AnswerTo, OpenAnalysis, Question } from "../../session/index.ts";
import type { AnalysisWorker } from "./analysis-worker.ts";
import { handOver } from "./hand-over.ts";
import { neverUp } from "./never-up.ts";

/** A thread that has not even taken the job by then never will. */
const PATIENCE_MS = 20_000;

/** A worker that checks a job and answers for it. It throws, at once or at the first question, where none can be started. */
export const openAnalysis: OpenAnalysis = (): AnalysisPort => {
  const worker = new Worker(new URL("./analysis-worker.ts", import.meta.url), { type: "module" });
  const broken = neverUp(worker);
  const late = () =>
    new Promise<never>((_, reject) => {
      setTimeout(() => reject(new Error("its thread does not answer")), PATIENCE_MS);
    });
  const remote: Remote<AnalysisWorker> = wrap<AnalysisWorker>(worker);
  return {
    begin: async (job) => {
      const begun = async () => {
        await handOver(job, remote);
        await remote.begin();
      };
      await Promise.race([begun(), broken, late()]);
    },
    check: (changes, machine) => Promise.race([remote.check(changes, machine), broken]),
    goOn: (machine) => Promise.race([remote.goOn(machine), broken]),
    answer: async <Q extends Question>(
      changes: Parameters<AnalysisPort["answer"]>[0],
      machine: string,
      question: Q,
    ) => Promise.race([remote.answer(changes, machine, question) as Promise<AnswerTo<Q>>, broken]),
    stop: () => worker.terminate(),
  };
};
