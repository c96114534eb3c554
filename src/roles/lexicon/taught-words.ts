import type { Job, RoleName } from "../../job/index.ts";
import { upperCase } from "./letters.ts";

/** Two printed words with the same key are one word where it has been taught: trimmed, without case. */
export const taughtKey = (printed: string): string => upperCase(printed).trim();

/** The role that the user taught the job for this word; null where nobody did. */
export function taughtRole(printed: string, taught: Job["words"]): RoleName | null {
  if (!taught || taught.length === 0) return null;
  let roles = known.get(taught);
  if (!roles) {
    // Of two lessons on one word the first counts.
    roles = new Map(taught.map((one) => [taughtKey(one.printed), one.role] as const).reverse());
    known.set(taught, roles);
  }
  return roles.get(taughtKey(printed)) ?? null;
}

const known = new WeakMap<NonNullable<Job["words"]>, ReadonlyMap<string, RoleName>>();
