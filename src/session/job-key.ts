/** A key for the store of jobs that no other job has, whichever window makes it. */
export const newJobKey = (): string =>
  Array.from({ length: 3 }, () => Math.floor(Math.random() * 2 ** 32).toString(36)).join("");
