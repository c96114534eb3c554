import { Copy, FileUp, FolderInput, Plus, SquarePen, Trash2 } from "lucide-react";
import { useCallback, useEffect, useState } from "react";
import type { JobSummary } from "../../store/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { CommitField } from "./commit-field.tsx";
import { Button, Modal } from "./controls/index.ts";
import { useJobDesk } from "./job-desk-context.tsx";
import styles from "./jobs-dialog.module.css";
import { openPicked } from "./open-picked.ts";
import { SAMPLES } from "./samples.ts";

/** The jobs to come back to, job files in and out, and the samples. */
export function JobsDialog() {
  const session = useSession();
  const desk = useJobDesk();
  const [jobs, setJobs] = useState<readonly JobSummary[] | null>(null);
  const refresh = useCallback(() => desk.list().then(setJobs), [desk]);
  useEffect(() => {
    void refresh();
  }, [refresh]);
  const close = () => session.show({ dialog: null });
  const leaveFor = (act: () => Promise<void>) => () => {
    close();
    void act();
  };

  return (
    <Modal title="Jobs" width="middle" onClose={close}>
      <div className={styles.acts}>
        <Button tone="primary" icon={<Plus aria-hidden />} onClick={leaveFor(desk.create)}>
          New job
        </Button>
        <Button icon={<FolderInput aria-hidden />} onClick={leaveFor(() => openPicked(desk))}>
          Open a file…
        </Button>
        <Button icon={<FileUp aria-hidden />} onClick={leaveFor(() => desk.saveAs(".pintruth"))}>
          Save to a file…
        </Button>
        <Button tone="quiet" onClick={leaveFor(() => desk.saveAs(".json"))}>
          Save as .json…
        </Button>
      </div>
      <ul className={styles.list} aria-label="Jobs on this device">
        {jobs?.map((job) => (
          <JobRow
            key={job.key}
            job={job}
            onChanged={refresh}
            onOpen={leaveFor(() => desk.open(job.key))}
          />
        ))}
      </ul>
      {jobs?.length === 0 && <p>No jobs on this device yet.</p>}
      <h3 className={styles.heading}>Samples</h3>
      <ul className={styles.list}>
        {SAMPLES.map((sample) => (
          <li key={sample.file} className={styles.row}>
            <button
              type="button"
              className={styles.open}
              onClick={leaveFor(() => desk.openSample(sample))}
            >
              <span className={styles.title}>{sample.title}</span>
              <span className={styles.about}>{sample.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </Modal>
  );
}

const when = (iso: string) =>
  new Date(iso).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });

interface JobRowProps {
  job: JobSummary;
  onOpen: () => void;
  onChanged: () => Promise<void>;
}

function JobRow({ job, onOpen, onChanged }: JobRowProps) {
  const desk = useJobDesk();
  const openKey = useSelected((state) => state.key);
  const [mode, setMode] = useState<"shown" | "renaming" | "deleting">("shown");
  const isOpen = job.key === openKey;
  const then = (done: Promise<void>) => {
    setMode("shown");
    void done.then(onChanged);
  };

  if (mode === "deleting") {
    return (
      <li className={styles.row} data-alarm="true">
        <p className={styles.question}>Delete “{job.title}” from this device for good?</p>
        <Button tone="danger" onClick={() => then(desk.remove(job.key))}>
          Delete
        </Button>
        <Button autoFocus onClick={() => setMode("shown")}>
          Keep
        </Button>
      </li>
    );
  }
  return (
    <li className={styles.row} aria-current={isOpen ? "true" : undefined}>
      {mode === "renaming" ? (
        <CommitField
          className={styles.rename}
          aria-label={`New title of ${job.title}`}
          autoFocus
          value={job.title}
          onCommit={(title) => then(desk.rename(job.key, title))}
          onBlurCapture={() => setMode("shown")}
        />
      ) : (
        <button type="button" className={styles.open} onClick={onOpen}>
          <span className={styles.title}>{job.title}</span>
          <span className={styles.about}>
            {isOpen ? "Open now · " : ""}
            {when(job.savedAt)}
          </span>
        </button>
      )}
      <Button
        tone="quiet"
        icon={<SquarePen aria-hidden />}
        aria-label={`Rename ${job.title}`}
        onClick={() => setMode("renaming")}
      />
      <Button
        tone="quiet"
        icon={<Copy aria-hidden />}
        aria-label={`Copy ${job.title}`}
        onClick={() => then(desk.duplicate(job.key))}
      />
      <Button
        tone="quiet"
        icon={<Trash2 aria-hidden />}
        aria-label={`Delete ${job.title}`}
        onClick={() => setMode("deleting")}
      />
    </li>
  );
}
