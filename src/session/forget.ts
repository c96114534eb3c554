import { type AdoptedRole, type Job, ownerOf, type SetAside } from "../job/index.ts";
import { takeOut } from "./diagram/draft.ts";

/**
 * Drops roles adopted for, and findings set aside about, what is no longer there: the next thing of
 * that name is another. `gone` is asked about ids of parts and machines, PinRefs and CavityRefs.
 */
export function forgetThings(draft: Job, gone: (ref: string) => boolean): void {
  const isOf = (ref: string) => gone(ref) || gone(ownerOf(ref));
  const isOfMachine = (machine: string | undefined) => machine !== undefined && gone(machine);
  dropAdopted(draft, ({ pin, machine }) => isOf(pin) || isOfMachine(machine));
  dropSetAside(draft, ({ subjects, machine }) => subjects.some(isOf) || isOfMachine(machine));
}

/** A job in which nothing is adopted any more has no list of it. */
export function dropAdopted(draft: Job, gone: (one: AdoptedRole) => boolean): void {
  if (!draft.adopted?.some(gone)) return;
  takeOut(draft.adopted, gone);
  if (draft.adopted.length === 0) delete draft.adopted;
}

export function dropSetAside(draft: Job, gone: (one: SetAside) => boolean): void {
  if (!draft.setAside?.some(gone)) return;
  takeOut(draft.setAside, gone);
  if (draft.setAside.length === 0) delete draft.setAside;
}
