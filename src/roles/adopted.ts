import type { Id, Job, PinRef, RoleName } from "../job/index.ts";
import type { Role } from "./role.ts";

/** The role adopted for each pin, of those that have one. */
export type AdoptedRoles = ReadonlyMap<PinRef, RoleName>;

/** What counts on one machine: its own adoptions come before those for all machines. */
export function adoptedRoles(adopted: Job["adopted"], machine: Id): AdoptedRoles {
  const roles = new Map<PinRef, RoleName>();
  for (const own of [false, true]) {
    for (const one of adopted ?? []) {
      if (own ? one.machine === machine : one.machine === undefined) roles.set(one.pin, one.role);
    }
  }
  return roles;
}

/** The adopted role, where the circuit still allows it; null where none is adopted or it doesn't. */
export const standingRole = ({ adopted, fits }: Pick<Role, "adopted" | "fits">): RoleName | null =>
  adopted !== undefined && fits.includes(adopted) ? adopted : null;
