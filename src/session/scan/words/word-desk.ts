import { keptLast, type Point } from "../../../base/index.ts";
import type { Id } from "../../../job/index.ts";
import type { WordCrop } from "../../../scan/index.ts";
import { drawnOf } from "../../changes/drawn-job.ts";
import type { Session } from "../../session.ts";
import { createStore, type Store } from "../../store.ts";
import type { PageDesk } from "../page-desk.ts";
import { pictureFileOf } from "../picture-file.ts";
import { traceDeskOf } from "../trace-desk.ts";
import type { TracedSheet } from "../trace-state.ts";
import { withOddDoubts } from "./odd-words.ts";
import { type ReadWord, readWord, type WordReader } from "./read-word.ts";
import { isSure, type WordDecision, type WordItem, wordItems } from "./word-items.ts";
import { type Renames, type WordWrite, writeAll } from "./word-writes.ts";

export interface WordState {
  /** Whether the queue is shown. */
  readonly isOpen: boolean;
  /** Whether all words are listed, beside the one in hand. */
  readonly isListed: boolean;
  /** The picture that was read, by its file; null before the first. */
  readonly file: string | null;
  readonly words: readonly ReadWord[];
  /** Share read, 0 to 1; null when nothing is being read. */
  readonly reading: number | null;
  /** A sentence for the user; null when nothing went wrong. */
  readonly problem: string | null;
  readonly decisions: Readonly<Record<string, WordDecision>>;
  /** Ids of the items that were open when the queue was put away last. */
  readonly seen: readonly string[];
  /** The word in hand; null: the first open one of the queue. */
  readonly at: string | null;
}

/** The words of the sheet at hand: read, looked over one by one, and written where they belong. */
export interface WordDesk extends Store<WordState> {
  /** Shows the queue, and reads the picture of the sheet at hand where that is not done yet. */
  open(): Promise<void>;
  /** Puts the queue away; what is being read is broken off. */
  close(): void;
  callOff(): void;
  list(isListed: boolean): void;
  /** The words of the sheet at hand; empty before they are read. The same object while nothing changes. */
  items(): readonly WordItem[];
  /** Of the words that were read, those that came to fit something since the queue was put away. */
  fresh(): readonly WordItem[];
  /** Puts away that there are such. */
  hearFresh(): void;
  /** The item in hand; null when there is none left. */
  current(): WordItem | null;
  go(id: string): void;
  /** To the next open item, or the one before: through the sure ones, then through the doubtful ones. */
  step(by: 1 | -1): void;
  correct(id: string, text: string): void;
  choose(id: string, target: string): void;
  /** One edit, then on to the next. False where it can't be written. */
  confirm(id: string): boolean;
  /** All sure ones in one edit. Returns how many. */
  confirmSure(): number;
  skip(id: string): void;
}

/** What the page's work is called while the reader waits for it. */
export const LOOKING_FOR_WORDS = "Looking for words";

const desks = new WeakMap<Session, WordDesk>();

/** Has the words of this session's pictures read by readers that `openReader` opens. */
export function keepWordsRead(
  session: Session,
  page: PageDesk,
  openReader: () => Promise<WordReader>,
): WordDesk {
  const desk = createWordDesk(session, page, openReader);
  desks.set(session, desk);
  return desk;
}

/** Null where the session was given no reader. */
export const wordDeskOf = (session: Session): WordDesk | null => desks.get(session) ?? null;

const NOTHING_READ: WordState = {
  isOpen: false,
  isListed: false,
  file: null,
  words: [],
  reading: null,
  problem: null,
  decisions: {},
  seen: [],
  at: null,
};

const NO_ITEMS: readonly WordItem[] = [];
const NO_JOINTS: readonly Point[] = [];

export function createWordDesk(
  session: Session,
  page: PageDesk,
  openReader: () => Promise<WordReader>,
): WordDesk {
  const store = createStore<WordState>(NOTHING_READ);
  const show = (change: Partial<WordState>) => store.set((state) => ({ ...state, ...change }));
  /** Raised by every calling off. */
  let round = 0;

  const fileAtHand = () => pictureFileOf(session.get());

  const items = itemsKept(session, store, fileAtHand);

  const decide = (id: string, change: WordDecision) =>
    store.set((state) => ({
      ...state,
      decisions: { ...state.decisions, [id]: { ...state.decisions[id], ...change } },
    }));

  const step = (by: 1 | -1, from = current()?.id) => {
    const open = inQueue(items().filter(({ state, id }) => state === "open" || id === from));
    const index = open.findIndex(({ id }) => id === from);
    const next = open[(index + by + open.length) % Math.max(1, open.length)];
    show({ at: next?.id ?? null });
  };

  const current = (): WordItem | null => {
    const all = items();
    const { at } = store.get();
    return (
      all.find(({ id }) => id === at) ??
      inQueue(all.filter(({ state }) => state === "open"))[0] ??
      null
    );
  };

  const write = (label: string, writes: readonly WordWrite[]) => {
    let renames: Renames = new Map();
    session.edit(label, (draft) => {
      renames = writeAll(draft, writes);
    });
    store.set((state) => ({ ...state, decisions: renamedTargets(state.decisions, renames) }));
    const { selection } = session.get();
    if (selection.some((ref) => renames.has(ref))) {
      session.show({ selection: selection.map((ref) => renames.get(ref) ?? ref) });
    }
  };

  const read = async (): Promise<void> => {
    const file = fileAtHand();
    const begun = ++round;
    const isOff = () => begun !== round || fileAtHand() !== file;
    show({ file: null, words: [], decisions: {}, seen: [], at: null, reading: 0, problem: null });
    const crops = await page.run(LOOKING_FOR_WORDS, (port, tell) => port.findWords(tell));
    let words: readonly ReadWord[] | null = null;
    let problem = page.get().problem;
    if (crops && !isOff()) {
      try {
        const reader = await openReader();
        const tell = (share: number) => {
          if (!isOff()) show({ reading: share });
        };
        words = await readAll(reader, crops, tell, isOff).finally(() => reader.close());
      } catch (error) {
        problem = error instanceof Error ? error.message : String(error);
      }
    }
    if (begun !== round) return;
    if (words && !isOff()) show({ file, words, reading: null });
    else show({ reading: null, problem: isOff() ? null : problem });
  };

  const freshOf = keptLast((all: readonly WordItem[], seen: WordState["seen"]) => {
    const known = new Set(seen);
    return all.filter(({ state, id }) => state === "open" && !known.has(id));
  });
  const openNow = () => items().flatMap(({ state, id }) => (state === "open" ? [id] : []));

  const callOff = () => {
    if (store.get().reading === null) return;
    round++;
    page.callOff();
    show({ reading: null });
  };

  return {
    ...store,
    open: async () => {
      show({ isOpen: true });
      const { file, reading } = store.get();
      if (reading === null && (file === null || file !== fileAtHand())) await read();
    },
    close: () => {
      callOff();
      // In one: between two changes all that is open would be told of as fresh.
      show({ isOpen: false, seen: openNow() });
    },
    callOff,
    list: (isListed) => show({ isListed }),
    items,
    fresh: () => {
      const { isOpen, seen } = store.get();
      return isOpen ? NO_ITEMS : freshOf(items(), seen);
    },
    hearFresh: () => show({ seen: openNow() }),
    current,
    go: (id) => show({ at: id }),
    step,
    correct: (id, text) => {
      // The further lines of a label are in the text now.
      const [, ...more] = items().find((one) => one.id === id)?.words ?? [];
      for (const line of more) decide(line, { text: "" });
      decide(id, { text: text.trim() });
      show({ at: id });
    },
    choose: (id, target) => decide(id, { target }),
    confirm: (id) => {
      const item = items().find((one) => one.id === id);
      const target = item?.targets[0];
      if (!target || target.problem !== null) return false;
      const was = current()?.id;
      step(1, id);
      const next = store.get().at;
      write(`Write ${target.says}`, target.writes);
      show({ at: next === was ? null : next });
      return true;
    },
    confirmSure: () => {
      const sure = items().filter(isSure);
      const writes = sure.flatMap(({ targets }) => targets[0]?.writes ?? []);
      if (writes.length > 0) write(`Write ${sure.length} printed words`, writes);
      show({ at: null });
      return sure.length;
    },
    skip: (id) => {
      step(1, id);
      decide(id, { skipped: true });
      if (store.get().at === id) show({ at: null });
    },
  };
}

/** Sure ones first: whoever comes to the doubtful ones has done with those that need no look. */
const inQueue = (open: readonly WordItem[]): readonly WordItem[] =>
  [true, false].flatMap((sure) => open.filter(({ doubts }) => (doubts.length === 0) === sure));

/** Reads every crop, as many at a time as the reader can. Null when it was called off. */
async function readAll(
  reader: WordReader,
  crops: readonly WordCrop[],
  tell: (share: number) => void,
  isOff: () => boolean,
): Promise<readonly ReadWord[] | null> {
  const found: (ReadWord | null)[] = crops.map(() => null);
  let next = 0;
  let done = 0;
  /** Where one crop can't be read the reader is given up: the other lanes end, and tell no more. */
  let isBroken = false;
  const lane = async () => {
    while (next < crops.length && !isOff() && !isBroken) {
      const n = next++;
      try {
        found[n] = await readWord(reader, crops[n] as WordCrop);
      } catch (error) {
        isBroken = true;
        throw error;
      }
      if (!isBroken) tell(++done / crops.length);
    }
  };
  await Promise.all(Array.from({ length: reader.lanes }, lane));
  if (isOff()) return null;
  const words = found.filter((one) => one !== null);
  const unread = crops.filter((_, n) => found[n] === null);
  return [...withOddDoubts(words, unread)].sort(
    (a, b) => a.box.top - b.box.top || a.box.left - b.box.left,
  );
}

/** Worked out anew only when the drawing, the words or what was said of them is another. */
function itemsKept(
  session: Session,
  store: Store<WordState>,
  fileAtHand: () => string | null,
): () => readonly WordItem[] {
  type Drawn = ReturnType<typeof drawnOf>["diagram"];
  // Of the job only its parts and wires are asked for: what else is edited makes no word another.
  const itemsOf = keptLast(
    (
      _parts: Drawn["parts"],
      _wires: Drawn["wires"],
      sheet: Id,
      words: WordState["words"],
      decisions: WordState["decisions"],
      joints: readonly Point[],
    ) => wordItems(drawnOf(session.get()), sheet, words, decisions, joints),
  );
  const jointsOf = keptLast((traced: TracedSheet) =>
    traced.nets.flatMap(({ nodes }) =>
      nodes.flatMap(({ kind, at }) => (kind === "joint" ? [at] : [])),
    ),
  );
  return () => {
    const { words, decisions, file } = store.get();
    const state = session.get();
    const { sheet } = state;
    if (sheet === null || file === null || file !== fileAtHand()) return NO_ITEMS;
    const { diagram } = drawnOf(state);
    const traced = traceDeskOf(session)?.get().traced;
    const joints = traced?.basis.sheet === sheet ? jointsOf(traced) : NO_JOINTS;
    return itemsOf(diagram.parts, diagram.wires, sheet, words, decisions, joints);
  };
}

/** What was chosen for a part stays chosen under its new name. */
function renamedTargets(
  decisions: WordState["decisions"],
  renames: Renames,
): WordState["decisions"] {
  if (renames.size === 0) return decisions;
  return Object.fromEntries(
    Object.entries(decisions).map(([id, decision]) => {
      const [field, ref] = (decision.target ?? "").split(" ") as [string, Id];
      const now = renames.get(ref);
      return [id, now === undefined ? decision : { ...decision, target: `${field} ${now}` }];
    }),
  );
}
