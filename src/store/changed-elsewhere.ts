/** A job was not saved, because the store has another version of it than the one built upon. */
export class ChangedElsewhere extends Error {
  override readonly name = "ChangedElsewhere";

  constructor(readonly key: string) {
    super("another window changed the job in the meantime");
  }
}

/** By its name, because a test may run the store from a bundle of its own. */
export const isChangedElsewhere = (error: unknown): boolean =>
  error instanceof Error && error.name === "ChangedElsewhere";
