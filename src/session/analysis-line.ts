import type { Job } from "../job/index.ts";
import { type Change, changesFrom } from "./analysis-feed.ts";
import type { AnalysisPort, OpenAnalysis } from "./analysis-server.ts";

/** A port whose far side is kept in step with the job asked about: all of it once, then its edits. */
export interface AnalysisLine {
  /**
   * Asks about a job, with the changes that lead the far side to it. One question at a time: the
   * next one only once this one is answered. `begun` is called where the far side starts anew.
   */
  ask<T>(
    job: Job,
    question: (port: AnalysisPort, changes: readonly Change[]) => Promise<T>,
    begun?: () => void,
  ): Promise<T>;
  /** Breaks off whatever is under way; the next question opens a port anew. */
  stop(): void;
}

export function createAnalysisLine(open: OpenAnalysis): AnalysisLine {
  let port: AnalysisPort | null = null;
  /** The job that the far side has. */
  let fed: Job | null = null;
  return {
    async ask(job, question, begun) {
      port ??= open();
      const asked = port;
      if (!fed || !isOffspring(fed, job)) {
        begun?.();
        await asked.begin(job);
        if (asked !== port) throw new Error("stopped");
        fed = job;
      }
      const changes = changesFrom(fed, job);
      fed = job;
      return question(asked, changes);
    },
    stop() {
      port?.stop();
      port = null;
      fed = null;
    },
  };
}

/** Whether most of a document comes from the other, so that the changes are the shorter message. */
export function isOffspring(before: Job, now: Job): boolean {
  const kept = new Set<object>(before.diagram.parts);
  const { parts } = now.diagram;
  const same = parts.reduce((count, part) => count + (kept.has(part) ? 1 : 0), 0);
  return 2 * same >= parts.length;
}
