import { proxy, type Remote, wrap } from "comlink";
import type { OpenTracePort } from "../../session/index.ts";
import { neverUp } from "./never-up.ts";
import { CalledOff } from "./run-sliced.ts";
import type { TraceWorker } from "./trace-worker.ts";

/** Works on pictures of sheets in a thread of its own. */
export const openTrace: OpenTracePort = () => {
  const worker = new Worker(new URL("./trace-worker.ts", import.meta.url), { type: "module" });
  const broken = neverUp(worker);
  const remote: Remote<TraceWorker> = wrap<TraceWorker>(worker);
  let letGo = () => {};
  // A thread that was ended answers no more.
  const ended = new Promise<never>((_, reject) => {
    letGo = () => reject(new CalledOff("the picture was let go"));
  });
  ended.catch(() => {});
  const orBroken = <T>(answer: Promise<T>): Promise<T> => Promise.race([answer, broken, ended]);
  return {
    open: (picture, tell) => orBroken(remote.open(picture, proxy(tell))),
    trace: (ask, tell) => orBroken(remote.trace(ask, proxy(tell))),
    netAt: (at, reach) => orBroken(remote.netAt(at, reach)),
    findWords: (tell) => orBroken(remote.findWords(proxy(tell))),
    findParts: (ask, tell) => orBroken(remote.findParts(ask, proxy(tell))),
    crop: (box) => orBroken(remote.crop(box)),
    callOff: () => void remote.callOff(),
    close: () => {
      worker.terminate();
      letGo();
    },
  };
};
