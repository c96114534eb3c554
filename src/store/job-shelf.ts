import type { Job } from "../job/index.ts";
import type { VisitStore } from "./port.ts";

/** The version that another one is to take the place of; no revision: there is to be none yet. */
export interface Upon {
  readonly revision: string | undefined;
}

/**
 * Where jobs lie, in whatever thread that is: what a store asks of the database. Each call is made
 * when the ones before it are done.
 */
export interface JobShelf
  extends Pick<
    VisitStore,
    "list" | "remove" | "putPicture" | "getPicture" | "lastOpened" | "setLastOpened"
  > {
  /** Rejects with `UnreadableJob` when it is there but no job. */
  load(key: string): Promise<{ readonly job: Job; readonly revision: string } | null>;
  /** Gives the new revision. Rejects with `ChangedElsewhere` where another version is there. */
  save(key: string, job: Job, upon: Upon | null): Promise<string>;
}
