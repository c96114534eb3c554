import type { AdoptedRole, Id, PinRef } from "../../job/index.ts";
import { wordsForRole } from "../../roles/index.ts";
import { changesOf } from "../changes/drawn-job.ts";
import { takeOut } from "../diagram/draft.ts";
import { dropAdopted } from "../forget.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

/** The printed word stays on the diagram as it is printed; what the sheet says is the user's. */
export const adoptRole: CorrectionEdit<CorrectionOf<"adopt-role">> = {
  label: ({ pin, role }) => `Adopt ${wordsForRole(role)} on the sheet (${pin})`,
  change: (draft, { pin, role, onThisMachine }, machine) => {
    const ownCircuit = changesOf(draft, machine).length > 0;
    const scope = onThisMachine || ownCircuit ? { machine } : {};
    const isReplaced = (one: AdoptedRole) =>
      one.pin === pin &&
      (one.machine === machine || (one.machine === undefined && scope.machine === undefined));
    draft.adopted ??= [];
    takeOut(draft.adopted, isReplaced);
    draft.adopted.push({ pin, role, ...scope });
  },
};

export const dropRole: CorrectionEdit<CorrectionOf<"drop-role">> = {
  label: ({ pin }) => `Take the adopted role off the sheet (${pin})`,
  change: (draft, { pin }, machine) => dropAdopted(draft, (one) => countsAt(one, pin, machine)),
};

const countsAt = (one: AdoptedRole, pin: PinRef, machine: Id) =>
  one.pin === pin && (one.machine === undefined || one.machine === machine);
