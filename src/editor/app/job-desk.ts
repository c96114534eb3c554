import { type Job, newJob } from "../../job/index.ts";
import { newJobKey, type Saving, type Session, type SessionState } from "../../session/index.ts";
import {
  isChangedElsewhere,
  type JobSummary,
  UnreadableJob,
  type VisitStore,
} from "../../store/index.ts";
import {
  fileNameFor,
  JOB_ENDINGS,
  type PickedFile,
  putFile,
  type WritableHandle,
} from "./file-transfer.ts";
import { type FileReading, isJobFile, jsonBlob, pintruthBlob, takeJobFile } from "./job-files.ts";
import { restoreRescued } from "./rescue.ts";
import { SAMPLES, type Sample } from "./samples.ts";

/**
 * What can be done to whole jobs. The open job is saved before another takes its place, and
 * stays open when anything goes wrong: the status line then says what.
 */
export interface JobDesk {
  readonly status: Saving["status"];
  list(): Promise<readonly JobSummary[]>;
  /** Opens the job of the last visit; on a first visit the demo. */
  start(): Promise<void>;
  open(key: string): Promise<void>;
  create(): Promise<void>;
  rename(key: string, title: string): Promise<void>;
  duplicate(key: string): Promise<void>;
  remove(key: string): Promise<void>;
  openSample(sample: Sample): Promise<void>;
  openDemo(): void;
  /** A job file, with the pictures that lie beside it, as a new job of the list. */
  openFile(file: PickedFile, beside: readonly PickedFile[]): Promise<void>;
  /** Back to the file it came from where that can be, else to a new one. */
  save(): Promise<void>;
  saveAs(ending: ".pintruth" | ".json"): Promise<void>;
}

/** Key of the stand-in that the session holds until the first job is there. */
export const NO_JOB = "";

/** `readFile` reads files of jobs, in this thread where it is left out. */
export function createJobDesk(
  session: Session,
  store: VisitStore,
  saving: Saving,
  readFile: FileReading = (file, beside) => takeJobFile(file, beside, store),
): JobDesk {
  const handles = new Map<string, WritableHandle>();
  const notice = (tone: "info" | "error", text: string) => session.show({ notice: { tone, text } });
  /** What went wrong last; opening a job clears the status line, and at the start this must stay. */
  let trouble: SessionState["notice"] = null;

  /** The open job must be in the store before another takes its place. */
  const settled = async () => {
    if (session.get().key === NO_JOB) return;
    if (!(await saving.flush())) throw new Error(saving.status.get().why ?? "it is not saved yet.");
  };

  const attempt = async (what: string, act: () => Promise<void>) => {
    try {
      await act();
    } catch (error) {
      notice("error", `${what}: ${error instanceof Error ? error.message : String(error)}`);
      trouble = session.get().notice;
    }
  };

  const show = async (key: string, job: Job) => {
    session.open(key, job);
    await store.setLastOpened(key);
  };

  const openNew = async (job: Job) => {
    await settled();
    const key = newJobKey();
    await store.save(key, job);
    await show(key, job);
    return key;
  };

  const openKept = async (key: string): Promise<boolean> => {
    if (key === session.get().key) return true;
    await settled();
    const job = await store.load(key);
    if (job) await show(key, job);
    return job !== null;
  };

  const openSample = async (sample: Sample) => {
    const response = await fetch(`${import.meta.env.BASE_URL}sample-data/${sample.file}`);
    if (!response.ok) throw new Error(`${sample.file} is not where it should be.`);
    const bytes = new Uint8Array(await response.arrayBuffer());
    const taken = await readFile({ name: sample.file, bytes }, []);
    if ("fault" in taken) throw new Error(taken.fault);
    await openNew(taken.job);
  };

  const saveTo = async (ending: ".pintruth" | ".json", handle: WritableHandle | null) => {
    const { key, job } = session.get();
    const data = ending === ".json" ? jsonBlob(job) : await pintruthBlob(job, store);
    const put = await putFile(data, fileNameFor(job.title, ending), handle);
    if (put.handle) handles.set(key, put.handle);
    if (!put.done) return;
    const pictures = ending === ".json" && job.diagram.sheets.some((sheet) => sheet.image);
    notice(
      "info",
      pictures
        ? "Saved. A .json file leaves the pictures out: .pintruth takes them along."
        : `Saved as ${put.handle?.name ?? fileNameFor(job.title, ending)}.`,
    );
  };

  return {
    status: saving.status,
    list: () => store.list(),

    start: async () => {
      trouble = null;
      await attempt("The last edits before the page was left are lost", () =>
        restoreRescued(store),
      );
      await attempt("The list of jobs could not be read", async () => {
        const last = await store.lastOpened();
        const others = (await store.list()).map((one) => one.key);
        for (const key of last ? [last, ...others] : others) {
          await attempt("The last job could not be opened", async () => void (await openKept(key)));
          if (session.get().key !== NO_JOB) return;
        }
        await attempt("The demo could not be opened", () => openSample(SAMPLES[0]));
      });
      // Whatever failed, there is something to work on; it enters the list with the first edit.
      if (session.get().key === NO_JOB) session.open(newJobKey(), newJob("New job", 24));
      session.show({ notice: trouble });
    },

    open: (key) =>
      attempt("That job could not be opened", async () => {
        try {
          if (!(await openKept(key))) throw new Error("it is not in the list any more.");
        } catch (error) {
          // What is stored is still there: the user gets it as a file, to put it right by hand.
          if (error instanceof UnreadableJob) {
            await putFile(new Blob([error.text]), "job-as-stored.json", null);
          }
          throw error;
        }
      }),

    create: () =>
      attempt("No new job could be started", async () => {
        await openNew(newJob("New job", 24));
        session.show({ station: "diagram" });
      }),

    rename: (key, title) =>
      attempt("The job could not be renamed", async () => {
        if (key === session.get().key) {
          session.edit(`Rename the job “${title}”`, (draft) => {
            draft.title = title;
          });
          await settled();
          return;
        }
        const rename = async () => {
          const job = await store.load(key);
          if (job) await store.save(key, { ...job, title }, job);
        };
        // Once more where a window that has it open saved it in between.
        await rename().catch((error: unknown) => {
          if (isChangedElsewhere(error)) return rename();
          throw error;
        });
      }),

    duplicate: (key) =>
      attempt("The job could not be copied", async () => {
        await settled();
        const job = await store.load(key);
        if (job) await store.save(newJobKey(), { ...job, title: `Copy of ${job.title}` });
      }),

    remove: (key) =>
      attempt("The job could not be deleted", async () => {
        if (key === session.get().key) {
          const other = (await store.list()).find((one) => one.key !== key);
          if (!other || !(await openKept(other.key))) await openNew(newJob("New job", 24));
          // Another job opened, but the list is still what the user is looking at.
          session.show({ dialog: "jobs" });
        }
        await store.remove(key);
        handles.delete(key);
      }),

    openSample: (sample) =>
      attempt(`${sample.title} could not be opened`, () => openSample(sample)),

    openDemo: () => {
      void attempt("The demo could not be opened", () => openSample(SAMPLES[0]));
    },

    openFile: (file, beside) =>
      attempt(`${file.name} could not be opened`, async () => {
        const taken = await readFile(file, beside);
        if ("fault" in taken) {
          const hint = isJobFile(file) ? "" : ` A job file ends in ${JOB_ENDINGS.join(" or ")}.`;
          notice("error", taken.fault + hint);
          return;
        }
        const key = await openNew(taken.job);
        if (file.handle) handles.set(key, file.handle);
        if (taken.missing.length > 0) {
          notice(
            "error",
            `Opened, but without ${taken.missing.join(", ")}: choose the job file and its pictures together.`,
          );
        } else notice("info", `Opened ${file.name}. It is in the list of jobs from now on.`);
      }),

    save: () =>
      attempt("The job could not be saved to a file", () => {
        const handle = handles.get(session.get().key) ?? null;
        return saveTo(handle?.name.endsWith(".json") ? ".json" : ".pintruth", handle);
      }),

    saveAs: (ending) => attempt("The job could not be saved to a file", () => saveTo(ending, null)),
  };
}
