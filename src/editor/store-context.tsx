import { createContext, type ReactNode, useContext } from "react";
import type { JobStore } from "../store/index.ts";

const JobStoreContext = createContext<JobStore | null>(null);

export function JobStoreProvider({ store, children }: { store: JobStore; children: ReactNode }) {
  return <JobStoreContext value={store}>{children}</JobStoreContext>;
}

/** Where jobs and their pictures are kept. */
export function useJobStore(): JobStore {
  const store = useContext(JobStoreContext);
  if (!store) throw new Error("useJobStore outside JobStoreProvider");
  return store;
}
