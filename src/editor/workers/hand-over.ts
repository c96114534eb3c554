import type { Job } from "../../job/index.ts";
import { createJoiner, cutJob, type JobPiece } from "./job-pieces.ts";

/** The far end of a hand-over. */
export interface Taker {
  takeOutline(outline: Job): void | Promise<void>;
  takePiece(piece: JobPiece): void | Promise<void>;
}

/** Hands a job over to another thread, piece by piece: in between, the screen can be looked after. */
export async function handOver(job: Job, taker: Taker): Promise<void> {
  const { outline, pieces } = cutJob(job);
  await taker.takeOutline(outline);
  for (const piece of pieces) await taker.takePiece(piece);
}

/** What takes a job in; `taken` is the job once all of it is there. */
export function createTaker(): Taker & { taken(): Job } {
  let joiner: ReturnType<typeof createJoiner> | null = null;
  return {
    takeOutline(outline) {
      joiner = createJoiner(outline);
    },
    takePiece: (piece) => joiner?.add(piece),
    taken() {
      if (!joiner) throw new Error("asked before it was begun");
      const job = joiner.job();
      joiner = null;
      return job;
    },
  };
}
