import type { Job } from "../job/index.ts";
import { ChangedElsewhere } from "./changed-elsewhere.ts";
import type { JobSummary, Picture, VisitStore } from "./port.ts";
import { fileFor, hashesIn, hashIn, storedJob, storedText } from "./stored-job.ts";

interface Kept {
  readonly text: string;
  readonly summary: JobSummary;
  readonly revision: string;
}

/** A store that forgets everything with the page: for tests, and where a browser keeps nothing. */
export function memoryJobStore(now = () => new Date().toISOString()): VisitStore {
  const jobs = new Map<string, Kept>();
  const pictures = new Map<string, Picture>();
  const seen = new WeakMap<Job, string>();
  const listeners = new Set<(key: string) => void>();
  let last: string | null = null;
  let saves = 0;
  const tell = (key: string) => {
    for (const listener of [...listeners]) listener(key);
  };
  return {
    async list() {
      const rows = [...jobs.values()].map(({ summary }) => summary);
      return rows.sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
    },
    async load(key) {
      const found = jobs.get(key);
      if (!found) return null;
      const job = storedJob(key, found.text);
      seen.set(job, found.revision);
      return job;
    },
    async save(key, job, over) {
      if (over && (jobs.get(key)?.revision ?? null) !== (seen.get(over) ?? null)) {
        throw new ChangedElsewhere(key);
      }
      saves += 1;
      const revision = String(saves);
      jobs.set(key, {
        text: storedText(job),
        summary: { key, title: job.title, savedAt: now() },
        revision,
      });
      seen.set(job, revision);
      tell(key);
    },
    revisionOf: (job) => seen.get(job) ?? null,
    watch(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async remove(key) {
      const gone = hashesIn(jobs.get(key)?.text ?? "");
      jobs.delete(key);
      const kept = new Set([...jobs.values()].flatMap(({ text }) => [...hashesIn(text)]));
      for (const hash of gone) if (!kept.has(hash)) pictures.delete(hash);
      tell(key);
    },
    async putPicture(picture) {
      const file = fileFor(picture);
      pictures.set(hashIn(file) ?? file, picture);
      return file;
    },
    async getPicture(file) {
      return pictures.get(hashIn(file) ?? file) ?? null;
    },
    async lastOpened() {
      return last !== null && jobs.has(last) ? last : null;
    },
    async setLastOpened(key) {
      last = key;
    },
  };
}
