import { useCallback } from "react";
import { importPicture, sniff } from "../import/index.ts";
import { useSession } from "../session-context.tsx";
import { useJobStore } from "../store-context.tsx";
import { JOB_ENDINGS, readFile } from "./file-transfer.ts";
import { useJobDesk } from "./job-desk-context.tsx";
import { isJobFile } from "./job-files.ts";
import { openFirstJob } from "./open-picked.ts";

/** Bytes in which a picture or a PDF tells what it is. */
const HEAD = 4096;

/** Rejects, naming what is accepted, when a file is neither a picture nor a PDF. */
async function mustBeOfUse(file: File): Promise<void> {
  if (sniff(new Uint8Array(await file.slice(0, HEAD).arrayBuffer())) !== null) return;
  const called = file.name === "" ? "This" : `“${file.name}”`;
  throw new Error(
    `${called} cannot be used here. Accepted are pictures (PNG, JPEG, WebP) and PDFs for the diagram, and job files (${JOB_ENDINGS.join(", ")}).`,
  );
}

/** Files dropped or pasted: a job file is opened, pictures and PDFs become sheets of the open job. */
export function useIncomingFiles(): (files: readonly File[]) => void {
  const session = useSession();
  const store = useJobStore();
  const desk = useJobDesk();
  return useCallback(
    (files) => {
      const take = async () => {
        if (files.some(isJobFile)) {
          await openFirstJob(desk, await Promise.all(files.map(readFile)));
          return;
        }
        for (const file of files) await mustBeOfUse(file);
        for (const file of files) await importPicture(file, { session, store });
        session.show({ station: "diagram" });
      };
      take().catch((error: unknown) => {
        const text = error instanceof Error ? error.message : String(error);
        session.show({ notice: { tone: "error", text } });
      });
    },
    [session, store, desk],
  );
}
