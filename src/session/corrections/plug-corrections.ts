import type { NoteMove } from "../../check/index.ts";
import { cavityRef, type Id, type Job, type Probe } from "../../job/index.ts";
import { link, unlinkPair } from "../match.ts";
import { placeOf, renameMark, setCavityState } from "../plug-edits.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

/** Colours and readings stay: they were found at the cavity itself. */
export const exchangeCavities: CorrectionEdit<CorrectionOf<"exchange-cavities">> = {
  label: ({ plug, a, b }) => `Exchange cavities ${a} and ${b} (${plug})`,
  change: (draft, { plug, a, b }) => {
    const [one, other] = [cavityRef(plug, a), cavityRef(plug, b)];
    for (const tie of draft.links) {
      if (tie.cavity === one) tie.cavity = other;
      else if (tie.cavity === other) tie.cavity = one;
    }
  },
};

/**
 * No stored point moves: what changes is the side that they were drawn from. What was noted on the
 * machines that prove nothing of it stays where it was noted.
 */
export const flipFace: CorrectionEdit<CorrectionOf<"flip-face">> = {
  label: ({ plug }, { job }) => {
    const side = job.plugs.find((one) => one.id === plug)?.side === "mating" ? "wire" : "mating";
    return `Flip the face: it was drawn from the ${side} side (${plug})`;
  },
  change: (draft, { plug, moves }, machine) => {
    const face = draft.plugs.find((one) => one.id === plug);
    if (!face) return;
    face.side = face.side === "mating" ? "wire" : "mating";
    moveNotesAt(draft, machine, plug, moves);
  },
};

export const moveNotes: CorrectionEdit<CorrectionOf<"move-notes">> = {
  label: ({ plug }) => `Move what was noted to the cavities where it belongs (${plug})`,
  change: (draft, { plug, moves }, machine) => moveNotesAt(draft, machine, plug, moves),
};

/** All at once, so that two cavities can exchange what was noted at them. */
function moveNotesAt(draft: Job, machine: Id, plug: Id, moves: readonly NoteMove[]): void {
  const own = draft.machines.find(({ id }) => id === machine);
  if (!own) return;
  const to = new Map<Probe, Probe>(
    moves.map((move) => [cavityRef(plug, move.from), cavityRef(plug, move.to)]),
  );
  const moved = (probe: Probe) => to.get(probe) ?? probe;
  for (const reading of own.readings) {
    reading.red = moved(reading.red);
    reading.black = moved(reading.black);
  }
  for (const wire of own.wires) wire.cavity = moved(wire.cavity);
}

export const correctMark: CorrectionEdit<CorrectionOf<"correct-mark">> = {
  label: ({ cavity, place, mark }) =>
    `Correct mark ${cavity} to ${mark}${place === undefined ? "" : ` (cavity ${place + 1} in order)`}`,
  change: (draft, { cavity, place, mark }) => {
    const first = placeOf(draft, cavity);
    if (!first) return;
    const there = { plug: first.plug, index: place ?? first.index };
    const known = draft.plugs.find(({ id }) => id === there.plug)?.cavities ?? [];
    const now = known[there.index]?.mark;
    if (now === undefined || cavityRef(there.plug, now) !== cavity) return;
    if (known.some((one) => one.mark === mark)) return;
    renameMark(draft, there, mark);
  },
};

export const markEmpty: CorrectionEdit<CorrectionOf<"mark-empty">> = {
  label: ({ cavity }) => `Mark cavity ${cavity} empty`,
  change: (draft, { cavity }) => {
    const place = placeOf(draft, cavity);
    if (place) setCavityState(draft, place, "empty");
  },
};

export const markInUse: CorrectionEdit<CorrectionOf<"mark-in-use">> = {
  label: ({ cavity }) => `Mark cavity ${cavity} in use`,
  change: (draft, { cavity }) => {
    const place = placeOf(draft, cavity);
    if (place) setCavityState(draft, place, "plain");
  },
};

export const removeLink: CorrectionEdit<CorrectionOf<"remove-link">> = {
  label: ({ pin, cavity }) => `Untie ${pin} from ${cavity}`,
  change: (draft, { pin, cavity }) => unlinkPair(draft, pin, cavity),
};

export const keepLink: CorrectionEdit<CorrectionOf<"keep-link">> = {
  label: ({ pin, cavity }) => `Keep only ${pin} in ${cavity}`,
  change: (draft, { pin, cavity }) => link(draft, pin, cavity),
};
