import { freeze } from "immer";
import {
  applyEdit,
  type EditOptions,
  EMPTY_HISTORY,
  type Job,
  ownerOf,
  redo as redoEdit,
  undo as undoEdit,
  type Versioned,
} from "../job/index.ts";
import { drawnOf } from "./changes/drawn-job.ts";
import { editDrawn } from "./changes/edit-drawn.ts";
import { keptRecording } from "./changes/recording.ts";
import { DrawingRefusal } from "./changes/write-back.ts";
import { NOT_OPERATING } from "./play/operate-state.ts";
import type { SessionState } from "./state.ts";
import { createStore, type Store } from "./store.ts";

/** The editor without a screen. Every change of the document goes through `edit`, `undo` or `redo`. */
export interface Session extends Pick<Store<SessionState>, "get" | "subscribe"> {
  /**
   * One intention of the user: one edit, one undo step. Nothing is recorded when nothing changed.
   * The draft's diagram is the circuit of the machine at hand, as the boards show it; each thing is
   * written back to where it came from, the diagram or a change of that machine.
   */
  edit(label: string, change: (draft: Job) => void, options?: EditOptions): void;
  /** As `edit`, on the job itself: for what concerns every machine at once, shown or not. */
  editWhole(label: string, change: (draft: Job) => void): void;
  undo(): void;
  redo(): void;
  /** Changes what is not part of the document: selection, tool, view. Never undone. */
  show(change: Partial<Omit<SessionState, "job" | "history" | "key">>): void;
  /** Opens another job in place of this one, with an empty history. */
  open(key: string, job: Job): void;
  /**
   * The open job as it was changed elsewhere. What was shown is shown on where it still exists;
   * the undo steps are forgotten, because they belong to the document that was here before.
   */
  reopen(job: Job): void;
  /** Goes on with this document under another key, undo steps and view included. */
  moveTo(key: string, job: Job): void;
}

/** What the screens show of a job just opened. */
export function openedState(key: string, job: Job): SessionState {
  const plug = job.plugs[0];
  return {
    key,
    job,
    history: EMPTY_HISTORY,
    machine: job.machines[0]?.id ?? "",
    sheet: job.diagram.sheets[0]?.id ?? null,
    plug: plug?.id ?? null,
    module: null,
    side: plug?.side ?? "mating",
    selection: [],
    tool: { name: "select" },
    station: "pins",
    dialog: null,
    showMatches: false,
    draft: null,
    trial: null,
    recording: null,
    scanDesk: false,
    operate: NOT_OPERATING,
    notice: null,
  };
}

/** Points the view back at things that still exist after the document changed under it. */
function settle(state: SessionState): SessionState {
  const { job } = state;
  const has = (list: readonly { id: string }[], id: string | null) =>
    id !== null && list.some((one) => one.id === id);
  const machine = has(job.machines, state.machine) ? state.machine : (job.machines[0]?.id ?? "");
  const sheet = has(job.diagram.sheets, state.sheet)
    ? state.sheet
    : (job.diagram.sheets[0]?.id ?? null);
  const plug = has(job.plugs, state.plug) ? state.plug : (job.plugs[0]?.id ?? null);
  return withRecording({ ...state, machine, sheet, plug });
}

/** Lets go of chosen parts and wires that an undo or a redo took away. */
function withoutGone(before: SessionState, after: SessionState): SessionState {
  if (after === before || after.selection.length === 0) return after;
  const idsIn = (state: SessionState) => {
    const { parts, wires } = drawnOf(state).diagram;
    return new Set([...parts, ...wires].map(({ id }) => id));
  };
  const were = idsIn(before);
  const are = idsIn(after);
  const selection = after.selection.filter((ref) => {
    const owner = ownerOf(ref);
    return !were.has(owner) || are.has(owner);
  });
  return selection.length === after.selection.length ? after : { ...after, selection };
}

/** Ends a recording that has nothing left to write to. */
function withRecording(state: SessionState): SessionState {
  const recording = keptRecording(state.recording, state.job, state.machine);
  return recording === state.recording ? state : { ...state, recording };
}

export function createSession(key: string, job: Job): Session {
  const store = createStore(openedState(key, job));
  const step = (move: (now: Versioned) => Versioned) =>
    store.set((state) => {
      const next = move(state);
      return next === state ? state : settle({ ...state, job: next.job, history: next.history });
    });
  const back = (move: (now: Versioned) => Versioned) => {
    const before = store.get();
    step(move);
    store.set((state) => withoutGone(before, state));
  };
  return {
    get: store.get,
    subscribe: store.subscribe,
    edit: (label, change, options) => {
      const { machine, recording } = store.get();
      const onBoards = (draft: Job) => editDrawn(draft, machine, recording, change);
      try {
        step((now) => applyEdit(now, label, onBoards, options));
      } catch (refused) {
        if (!(refused instanceof DrawingRefusal)) throw refused;
        const notice = { tone: "error", text: refused.message } as const;
        store.set((state) => ({ ...state, notice }));
      }
    },
    editWhole: (label, change) => step((now) => applyEdit(now, label, change)),
    undo: () => back(undoEdit),
    redo: () => back(redoEdit),
    show: (change) => store.set((state) => withRecording({ ...state, ...change })),
    // Frozen once, or the first edit of a large job would stop to do it.
    open: (nextKey, nextJob) => store.set(() => openedState(nextKey, freeze(nextJob, true))),
    reopen: (nextJob) =>
      store.set((state) => settle({ ...state, job: nextJob, history: EMPTY_HISTORY })),
    moveTo: (nextKey, nextJob) =>
      store.set((state) => settle({ ...state, key: nextKey, job: nextJob })),
  };
}
