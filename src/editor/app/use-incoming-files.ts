import { useCallback } from "react";
import { importPicture } from "../import/index.ts";
import { useSession } from "../session-context.tsx";
import { useJobStore } from "../store-context.tsx";
import { readFile } from "./file-transfer.ts";
import { useJobDesk } from "./job-desk-context.tsx";
import { isJobFile } from "./job-files.ts";
import { openFirstJob } from "./open-picked.ts";

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
