import { expect, test } from "vitest";
import type { WordCrop } from "../../../../src/scan/index.ts";
import {
  createPageDesk,
  createSession,
  createWordDesk,
  isSure,
  keepOneOpen,
  type Print,
  type Session,
  type TracePort,
  type WordDesk,
  type WordItem,
  type WordReader,
} from "../../../../src/session/index.ts";
import { type PrintedText, sweeperLabels } from "../../../support/sweeper-print.ts";
import { wordlessSweeper } from "../../../support/wordless-sweeper.ts";

const LABELS = sweeperLabels();

/** Each crop is a picture of one shade, which says which label it is of, however it is enlarged. */
const cropsOf = (labels: readonly PrintedText[]): readonly WordCrop[] =>
  labels.map(({ box, turn, tall }, n) => ({
    box,
    turn,
    tall,
    isCapitals: true,
    isCut: false,
    isCrowded: false,
    bridged: null,
    aside: 0,
    grey: { width: 8, height: 8, data: new Uint8Array(64).fill(n) },
  }));

const shadeOf = ({ picture }: Print): number => picture.at(-1) as number;

interface Bench {
  readonly session: Session;
  readonly desk: WordDesk;
  /** What was asked of the reader, and whether it was let go. */
  readonly reader: { asked: number; opened: number; closed: number };
}

function bench(
  labels = LABELS,
  read: (text: string, print: Print) => Promise<{ text: string; sure: number }> = async (text) => ({
    text,
    sure: 95,
  }),
): Bench {
  const { job } = wordlessSweeper();
  const session = createSession("job", job);
  const crops = cropsOf(labels);
  const port: TracePort = {
    open: async () => ({ width: 3508, height: 2480, lineWidth: 4 }),
    findWords: async () => crops,
    callOff: () => {},
    close: () => {},
  } as Partial<TracePort> as TracePort;
  const page = createPageDesk(
    session,
    () => port,
    async () => ({ bytes: new Uint8Array(), type: "image/jpeg" }),
  );
  const reader = { asked: 0, opened: 0, closed: 0 };
  const open = async (): Promise<WordReader> => {
    reader.opened++;
    return {
      lanes: 2,
      read: async (print) => {
        reader.asked++;
        const said = await read(labels[shadeOf(print)]?.text ?? "", print);
        // Where its letters stand is not told: crops here have no ink.
        return { ...said, letters: [] };
      },
      close: () => {
        reader.closed++;
      },
    };
  };
  return { session, desk: createWordDesk(session, page, open), reader };
}

const item = (desk: WordDesk, text: string) => {
  const found = desk.items().find((one) => one.text === text);
  if (!found) throw new Error(`no item ${text}`);
  return found;
};
const wire = ({ session }: Bench, id: string) =>
  session.get().job.diagram.wires.find((one) => one.id === id);
const edits = ({ session }: Bench) => session.get().history.done.length;

test("opening reads every word once, lets the reader go and shows the queue", async () => {
  const { desk, reader } = bench();
  await desk.open();
  expect(desk.get()).toMatchObject({ isOpen: true, reading: null, problem: null });
  expect(desk.items().length).toBeGreaterThan(90);
  expect(reader).toMatchObject({ opened: 1, closed: 1 });
  const { asked } = reader;
  desk.close();
  await desk.open();
  expect(reader).toMatchObject({ opened: 1, asked });
});

test("one confirmed word is one edit, and undo makes it open again", async () => {
  const at = bench();
  await at.desk.open();
  const before = edits(at);
  expect(at.desk.confirm(item(at.desk, "58-1 GY/BK").id)).toBe(true);
  expect(wire(at, "W41")).toMatchObject({ number: "58-1", colour: { base: "GY", tracer: "BK" } });
  expect(edits(at)).toBe(before + 1);
  expect(item(at.desk, "58-1 GY/BK").state).toBe("written");
  at.session.undo();
  expect(wire(at, "W41")?.number).toBeUndefined();
  expect(item(at.desk, "58-1 GY/BK").state).toBe("open");
});

test("all sure ones are one edit; doubtful ones wait", async () => {
  const doubtful = "58-1 GY/BK";
  const at = bench(LABELS, async (text) => ({ text, sure: text === doubtful ? 30 : 95 }));
  await at.desk.open();
  const before = edits(at);
  const count = at.desk.confirmSure();
  expect(count).toBeGreaterThan(80);
  expect(edits(at)).toBe(before + 1);
  expect(wire(at, "W41")?.number).toBeUndefined();
  expect(wire(at, "W1")?.number).toBe("31-0");
  expect(at.desk.current()?.text).toBe(doubtful);
  expect(at.desk.confirmSure()).toBe(0);
  expect(edits(at)).toBe(before + 1);
  at.session.undo();
  expect(wire(at, "W1")?.number).toBeUndefined();
});

test("a correction by hand is taken as it is typed, and is sure", async () => {
  const at = bench(LABELS, async (text) => ({
    text: text === "58-1 GY/BK" ? "5B-I" : text,
    sure: 20,
  }));
  await at.desk.open();
  const read = item(at.desk, "5B-I");
  expect(read.doubts.length).toBeGreaterThan(1);
  at.desk.correct(read.id, "58-2 GY/RD");
  const now = item(at.desk, "58-2 GY/RD");
  expect(now).toMatchObject({ id: read.id, isCorrected: true, doubts: [] });
  at.desk.confirm(now.id);
  expect(wire(at, "W41")).toMatchObject({ number: "58-2", colour: { base: "GY", tracer: "RD" } });
});

test("a label of two lines is one item, and a correction replaces both", async () => {
  const at = bench();
  await at.desk.open();
  const both = item(at.desk, "BATTERY ISOLATOR");
  at.desk.correct(both.id, "MAIN SWITCH");
  const now = item(at.desk, "MAIN SWITCH");
  expect(at.desk.items().some(({ text }) => /ISOLATOR/.test(text))).toBe(false);
  at.desk.confirm(now.id);
  expect(at.session.get().job.diagram.parts.find(({ id }) => id === "Q1")?.label).toBe(
    "MAIN SWITCH",
  );
});

test("steps go from open word to open word, round and round, past what is skipped", async () => {
  const { desk } = bench();
  await desk.open();
  const first = desk.current()?.id as string;
  desk.step(1);
  const second = desk.current()?.id as string;
  expect(second).not.toBe(first);
  desk.step(-1);
  expect(desk.current()?.id).toBe(first);
  desk.step(-1);
  expect(desk.items().findLast(({ state }) => state === "open")?.id).toBe(desk.current()?.id);
  desk.go(second);
  desk.skip(second);
  expect(desk.items().find(({ id }) => id === second)?.state).toBe("skipped");
  expect(desk.current()?.id).not.toBe(second);
  desk.go(first);
  desk.step(1);
  expect(desk.current()?.id).not.toBe(second);
});

test("sure words come first, and doubtful ones only when those are done", async () => {
  const doubtful = new Set(LABELS.flatMap(({ text }, n) => (n % 4 === 0 ? [text] : [])));
  const { desk } = bench(LABELS, async (text) => ({ text, sure: doubtful.has(text) ? 30 : 95 }));
  await desk.open();
  const steps: boolean[] = [];
  const open = desk.items().filter(({ state }) => state === "open");
  for (const _ of open) {
    const now = desk.current() as WordItem;
    steps.push(isSure(now));
    desk.step(1);
  }
  expect(steps).toEqual([...steps].sort((a, b) => Number(b) - Number(a)));
  expect(new Set(steps).size).toBe(2);
});

test("words that come to fit what is drawn after the queue was put away are told, and read no second time", async () => {
  const at = bench();
  const { session, desk, reader } = at;
  const splices = session.get().job.diagram.parts.filter(({ kind }) => kind === "splice");
  const [splice] = splices;
  if (!splice) throw new Error("no splice");
  // As it is before lines are traced.
  session.edit("Without splices", (draft) => {
    const { diagram } = draft;
    diagram.parts = diagram.parts.filter(({ kind }) => kind !== "splice");
    diagram.wires = [];
  });
  await desk.open();
  expect(desk.fresh()).toEqual([]);
  desk.close();
  expect(desk.fresh()).toEqual([]);
  const { asked } = reader;
  session.edit("Draw a splice", (draft) => void draft.diagram.parts.push(splice));
  expect(desk.fresh().map(({ targets }) => targets[0]?.ref)).toEqual([splice.id]);
  session.undo();
  expect(desk.fresh()).toEqual([]);
  session.redo();
  await desk.open();
  expect(desk.fresh()).toEqual([]);
  expect(reader.asked).toBe(asked);
  desk.close();
  session.undo();
  session.redo();
  expect(desk.fresh()).toEqual([]);
});

test("a queue that gives way to another list is put away in one change", async () => {
  const { desk } = bench();
  await desk.open();
  let told = 0;
  const list = { isOpen: false };
  keepOneOpen([
    { ...desk, isOpen: () => desk.get().isOpen, isBusy: () => false },
    {
      subscribe: desk.subscribe,
      isOpen: () => list.isOpen,
      isBusy: () => false,
      close: () => {},
    },
  ]);
  list.isOpen = true;
  desk.subscribe(() => told++);
  desk.list(true);
  expect(desk.get().isOpen).toBe(false);
  expect(told).toBe(2);
});

test("reading is broken off, and nothing is kept of it", async () => {
  let stop = () => {};
  let asked = 0;
  const { desk, reader } = bench(LABELS, async (text) => {
    if (++asked === 10) stop();
    return { text, sure: 95 };
  });
  stop = desk.callOff;
  await desk.open();
  expect(desk.get().reading).toBeNull();
  expect(desk.items()).toEqual([]);
  expect(reader.closed).toBe(1);
  expect(reader.asked).toBeLessThan(30);
});

test("a reader that can't be opened is told, and may be tried again", async () => {
  const { session } = bench();
  const page = createPageDesk(
    session,
    () =>
      ({
        open: async () => ({ width: 1, height: 1, lineWidth: 1 }),
        findWords: async () => cropsOf(LABELS),
        close: () => {},
        callOff: () => {},
      }) as Partial<TracePort> as TracePort,
    async () => ({ bytes: new Uint8Array(), type: "image/jpeg" }),
  );
  const desk = createWordDesk(session, page, async () => {
    throw new Error("The reader of print could not be started.");
  });
  await desk.open();
  expect(desk.get()).toMatchObject({
    reading: null,
    problem: "The reader of print could not be started.",
    file: null,
  });
});

test("words of a picture that is no longer the sheet's are not shown", async () => {
  const at = bench();
  await at.desk.open();
  at.session.edit("Another picture", (draft) => {
    const [sheet] = draft.diagram.sheets;
    if (sheet) sheet.image = { file: "images/other.png", width: 100, height: 100 };
  });
  expect(at.desk.items()).toEqual([]);
});

test("a reader that breaks in one lane is given up: the other lane ends it no other way", async () => {
  let asked = 0;
  let goOn = () => {};
  const slow = new Promise<void>((resolve) => {
    goOn = resolve;
  });
  const { desk, reader } = bench(LABELS, async (text) => {
    asked++;
    if (asked === 2) throw new Error("The reader of print stopped.");
    await slow;
    return { text, sure: 95 };
  });
  await desk.open();
  expect(desk.get()).toMatchObject({ reading: null, problem: "The reader of print stopped." });
  goOn();
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(desk.get()).toMatchObject({ reading: null, problem: "The reader of print stopped." });
  // The crop that was under way is read to its end, and none after it.
  expect(asked).toBeLessThan(10);
  expect(reader.closed).toBe(1);
});
