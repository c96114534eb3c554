import type { RoleName } from "../../job/index.ts";

/** One thing that a printed word may mean. */
export interface Meaning {
  readonly role: RoleName;
  /** Stated by the word itself ("LOW SIDE OUT"); null where it says nothing of a side. */
  readonly side: "high" | "low" | null;
}

export const means = (...roles: readonly RoleName[]): readonly Meaning[] =>
  roles.map((role) => ({ role, side: null }));

export const meansSided = (role: RoleName, side: "high" | "low"): readonly Meaning[] => [
  { role, side },
];
