import type { JobSummary, Picture, VisitStore } from "./port.ts";
import { fileFor, hashesIn, hashIn, storedJob, storedText } from "./stored-job.ts";

/** A store that forgets everything with the page: for tests, and where a browser keeps nothing. */
export function memoryJobStore(now = () => new Date().toISOString()): VisitStore {
  const jobs = new Map<string, { readonly text: string; readonly summary: JobSummary }>();
  const pictures = new Map<string, Picture>();
  let last: string | null = null;
  return {
    async list() {
      const rows = [...jobs.values()].map(({ summary }) => summary);
      return rows.sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
    },
    async load(key) {
      const found = jobs.get(key);
      return found ? storedJob(key, found.text) : null;
    },
    async save(key, job) {
      jobs.set(key, {
        text: storedText(job),
        summary: { key, title: job.title, savedAt: now() },
      });
    },
    async remove(key) {
      const gone = hashesIn(jobs.get(key)?.text ?? "");
      jobs.delete(key);
      const kept = new Set([...jobs.values()].flatMap(({ text }) => [...hashesIn(text)]));
      for (const hash of gone) if (!kept.has(hash)) pictures.delete(hash);
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
