import { createContext, type ReactNode, useContext } from "react";
import type { JobDesk } from "./job-desk.ts";

const JobDeskContext = createContext<JobDesk | null>(null);

export function JobDeskProvider({ desk, children }: { desk: JobDesk; children: ReactNode }) {
  return <JobDeskContext value={desk}>{children}</JobDeskContext>;
}

/** What can be done to whole jobs: open, start, copy, put on disk. */
export function useJobDesk(): JobDesk {
  const desk = useContext(JobDeskContext);
  if (!desk) throw new Error("useJobDesk outside JobDeskProvider");
  return desk;
}
