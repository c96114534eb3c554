import { type Remote, wrap } from "comlink";
import { createPlay } from "../../circuit/index.ts";
import type { Id, Job } from "../../job/index.ts";
import { type LivePort, type OpenPlay, portOf } from "../../session/index.ts";
import { handOver } from "./hand-over.ts";
import { neverUp } from "./never-up.ts";
import type { PlayWorker } from "./play-worker.ts";

/** Past so many wires a step takes longer than a frame, and would hold the drawing up. */
const MANY_WIRES = 1500;

/** A play beside the drawing where that is quick, else in a worker. */
export const openPlay: OpenPlay = (job, machine) =>
  job.diagram.wires.length > MANY_WIRES
    ? playInWorker(job, machine)
    : portOf(() => createPlay(job, machine));

function playInWorker(job: Job, machine: Id | null): LivePort {
  const worker = new Worker(new URL("./play-worker.ts", import.meta.url), { type: "module" });
  const broken = neverUp(worker);
  const remote: Remote<PlayWorker> = wrap<PlayWorker>(worker);
  const begun = handOver(job, remote).then(() => remote.begin(machine));
  begun.catch(() => {});
  const ask = async <T>(question: () => Promise<T>): Promise<T> => {
    const answer = begun.then(question);
    return Promise.race([answer, broken]);
  };
  return {
    state: () => ask(() => remote.state()),
    step: (step) => ask(() => remote.step(step)),
    volts: (red, black) => ask(() => remote.volts(red, black)),
    stop: () => worker.terminate(),
  };
}
