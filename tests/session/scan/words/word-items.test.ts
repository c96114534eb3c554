import { produce } from "immer";
import { expect, test } from "vitest";
import type { Point } from "../../../../src/base/index.ts";
import type { Job } from "../../../../src/job/index.ts";
import { isSure, type ReadWord, shapeOf, type WordItem } from "../../../../src/session/index.ts";
import { wordItems } from "../../../../src/session/scan/words/word-items.ts";
import { writeAll } from "../../../../src/session/scan/words/word-writes.ts";
import { sweeperJob, wordlessSweeper } from "../../../support/wordless-sweeper.ts";
import { sweeperWords } from "./printed-words.ts";

const SHEET = "sheet7";
const { job: BLANK } = wordlessSweeper();
const WORDS = sweeperWords();
const itemsOf = (job: Job, words = WORDS) => wordItems(job, SHEET, words, {});
const saying = (items: readonly WordItem[], text: string) =>
  items.filter((item) => item.text === text).map(({ targets }) => targets[0]?.says);
const open = (items: readonly WordItem[]) => items.filter(({ state }) => state === "open");
const written = (job: Job, items: readonly WordItem[]) =>
  produce(job, (draft) => {
    writeAll(
      draft as Job,
      open(items).flatMap(({ targets }) => targets[0]?.writes ?? []),
    );
  });

test("all that is printed beside a thing goes to that thing, and the demo comes out", () => {
  const truth = sweeperJob();
  const done = written(BLANK, itemsOf(BLANK));
  expect(done.diagram.parts.map(({ id }) => id)).toEqual(truth.diagram.parts.map(({ id }) => id));
  const wires = ({ diagram }: Job) =>
    diagram.wires.map(({ from, to, number, colour }) => ({ from, to, number, colour }));
  expect(wires(done)).toEqual(wires(truth));
  const fuses = ({ diagram }: Job) =>
    diagram.parts.flatMap((part) => (part.kind === "fuse" ? [part.amps] : []));
  expect(fuses(done)).toEqual(fuses(truth));
  const pins = ({ diagram }: Job) =>
    diagram.parts.flatMap((part) =>
      part.kind === "module" ? part.pins.map(({ id, printed }) => [id, printed]) : [],
    );
  expect(pins(done)).toEqual(pins(truth));
  const labels = Object.fromEntries(done.diagram.parts.map(({ id, label }) => [id, label]));
  expect(labels).toMatchObject({
    A1: "PUMP HOLD MODULE",
    Q1: "BATTERY ISOLATOR",
    S1: "KEY OFF-RUN-START",
    M1: "WATER PUMP",
    K2: "PUMP",
    P2: "LOW WATER",
  });
});

test("once written, nothing is left to write, and every item says so", () => {
  const done = written(BLANK, itemsOf(BLANK));
  const items = itemsOf(done);
  expect(open(items)).toEqual([]);
  expect(items.filter(({ state }) => state === "written").length).toBeGreaterThan(90);
});

test("what is meant is told in a user's words", () => {
  const items = itemsOf(BLANK);
  expect(saying(items, "TRIG")).toEqual(["A1:3: printed word TRIG"]);
  expect(saying(items, "58-1 GY/BK")).toEqual(["W41: number 58-1, colour GYBK"]);
  // Fuses have their names in another order than on the drawing.
  expect(saying(items, "F1 60 A")).toEqual(["F2 (fuse): name F1, fuse value 60 A"]);
});

test("a print goes to the wire along which it runs, though another is nearer to its end", () => {
  const items = itemsOf(BLANK);
  const ofWire = (text: string) => items.find((item) => item.text === text)?.targets[0]?.ref;
  const truth = sweeperJob();
  for (const { id, number } of truth.diagram.wires) {
    const item = items.find(({ text }) => number !== undefined && text.startsWith(`${number} `));
    expect(item?.targets[0]?.ref, number).toBe(id);
  }
  expect(ofWire("21-1 YE")).not.toBe(ofWire("21-3 YE"));
});

test("what belongs to nothing drawn stays listed, with no place", () => {
  const stray: ReadWord = {
    id: "3000,2000",
    box: { left: 3000, top: 2000, right: 3100, bottom: 2024 },
    turn: 0,
    tall: 24,
    text: "F9",
    sure: 95,
    doubts: [],
    isPrint: true,
    others: [],
  };
  const [item] = itemsOf(BLANK, [stray]);
  expect(item).toMatchObject({ text: "F9", state: "nowhere", targets: [] });
});

const changed = (text: string, change: Partial<ReadWord>) =>
  itemsOf(
    BLANK,
    WORDS.map((word) => (word.text === text ? { ...word, ...change } : word)),
  ).find(({ box }) => box === WORDS.find((word) => word.text === text)?.box) ??
  itemsOf(
    BLANK,
    WORDS.map((word) => (word.text === text ? { ...word, ...change } : word)),
  ).find(({ id }) => id === WORDS.find((word) => word.text === text)?.id);

test("a doubtful reading, a mended one, and one that replaces something are never sure", () => {
  expect(changed("58-1 GY/BK", {})?.doubts).toEqual([]);
  const doubtful = changed("58-1 GY/BK", {
    sure: 40,
    doubts: ["unclear"],
    others: ["58-1 GY/8K"],
  });
  expect(doubtful?.doubts).toEqual(["Hard to read.", "It may also say “58-1 GY/8K”."]);
  expect(isSure(doubtful as WordItem)).toBe(false);
  const mended = changed("58-1 GY/BK", { text: "58-1 GY/8K" });
  expect(mended?.targets[0]?.says).toBe("W41: number 58-1, colour GYBK");
  expect(mended?.doubts).toEqual(["Letters were put right: it was read as “58-1 GY/8K”."]);
  const numbered = produce(BLANK, (draft) => {
    const wire = draft.diagram.wires.find(({ id }) => id === "W41");
    if (wire) wire.number = "99";
  });
  const item = itemsOf(numbered).find(({ text }) => text === "58-1 GY/BK");
  expect(item?.doubts).toEqual(["It takes the place of “99”."]);
});

test("between two wires as near as each other it is doubtful which is meant", () => {
  const [from, to] = BLANK.diagram.wires.find(({ id }) => id === "W15") ? ["W15", "W16"] : ["", ""];
  expect([from, to]).toEqual(["W15", "W16"]);
  const two = twoWires(40);
  expect(two?.targets.map(({ ref }) => ref).sort()).toEqual(["W1", "W2"]);
  expect(two?.doubts.some((doubt) => doubt.startsWith("It may belong to W"))).toBe(true);
  expect(twoWires(70)?.doubts).toEqual([]);
});

/** A print between two level wires; the lower one `below` pixels under the upper one. */
function twoWires(below: number): WordItem | undefined {
  const part = (id: string, x: number, y: number) =>
    ({ id, kind: "splice", sheet: SHEET, at: [x, y], turn: 0, unit: 5 }) as const;
  const job = {
    ...BLANK,
    diagram: {
      ...BLANK.diagram,
      parts: [
        part("X1", 100, 100),
        part("X2", 600, 100),
        part("X3", 100, 100 + below),
        part("X4", 600, 100 + below),
      ],
      wires: [
        { id: "W1", from: "X1:1", to: "X2:1" },
        { id: "W2", from: "X3:1", to: "X4:1" },
      ],
    },
  } as unknown as Job;
  const word: ReadWord = {
    id: "300,110",
    box: { left: 300, top: 110, right: 400, bottom: 130 },
    turn: 0,
    tall: 20,
    text: "30-1 RD",
    sure: 95,
    doubts: [],
    isPrint: true,
    others: [],
  };
  return itemsOf(job, [word])[0];
}

/** A relay with a wire to its 87 that nothing is printed along. */
function relayJob(): Job {
  return {
    ...BLANK,
    diagram: {
      ...BLANK.diagram,
      parts: [
        { id: "K1", kind: "relay", sheet: SHEET, at: [300, 300], turn: 0, unit: 20 },
        { id: "X1", kind: "splice", sheet: SHEET, at: [700, 100], turn: 0, unit: 20 },
      ],
      wires: [{ id: "W1", from: "K1:87", to: "X1:1", path: [] }],
    },
  } as unknown as Job;
}

test("what a relay's pin is called anyway is no wire's number, and a bare number is never sure", () => {
  const job = relayJob();
  const pin = shapeOf(job.diagram.parts[0] as Job["diagram"]["parts"][number]).pins.find(
    ({ ref }) => ref === "K1:87",
  );
  if (!pin) throw new Error("no pin 87");
  const [x, y] = pin.at;
  const at = (left: number, top: number, text: string): ReadWord => ({
    id: `${left},${top}`,
    box: { left, top, right: left + 12 * text.length, bottom: top + 18 },
    turn: 0,
    tall: 18,
    text,
    sure: 96,
    doubts: [],
    isPrint: true,
    others: [],
  });
  const beside = at(x + 6, y + 2, "87");
  expect(itemsOf(job, [beside])[0]).toMatchObject({ state: "nowhere", targets: [] });
  // Half way along the wire, clear of both ends.
  const [along] = [at((x + 700) / 2 - 6, (y + 100) / 2 - 9, "87")];
  const [item] = itemsOf(job, [along as ReadWord]);
  expect(item?.targets[0]?.says).toBe("W1: number 87");
  expect(isSure(item as WordItem)).toBe(false);
});

test("a value beside a wire is not taken for its number", () => {
  const job = relayJob();
  const value: ReadWord = {
    id: "500,190",
    box: { left: 480, top: 190, right: 530, bottom: 208 },
    turn: 0,
    tall: 18,
    text: "10A",
    sure: 96,
    doubts: [],
    isPrint: true,
    others: [],
  };
  expect(itemsOf(job, [value])[0]).toMatchObject({ state: "nowhere" });
});

test("a label that names a key or an isolator tells the switch what works it, never unseen", () => {
  const unsaid = produce(BLANK, (draft) => {
    for (const part of draft.diagram.parts) if (part.kind === "switch") part.control = "operator";
  });
  const items = itemsOf(unsaid);
  const says = items.filter(({ targets }) =>
    targets[0]?.writes.some(({ field }) => field === "control"),
  );
  expect(says.map(({ text, targets }) => [text, targets[0]?.says.split(": ")[1]])).toEqual(
    expect.arrayContaining([
      ["BATTERY ISOLATOR", "label BATTERY ISOLATOR, a battery isolator"],
      ["KEY OFF-RUN-START", "label KEY OFF-RUN-START, worked by a key"],
    ]),
  );
  expect(says.filter(isSure)).toEqual([]);
  const controls = ({ diagram }: Job) =>
    diagram.parts.flatMap((part) => (part.kind === "switch" ? [[part.id, part.control]] : []));
  expect(controls(written(unsaid, items))).toEqual(
    expect.arrayContaining([
      ["Q1", "isolator"],
      ["S1", "key"],
      ["S2", "operator"],
    ]),
  );
  // Where it is said already, the label alone is written.
  expect(itemsOf(BLANK).find(({ text }) => text === "BATTERY ISOLATOR")?.doubts).toEqual([]);
});

/** A lamp, and a splice or another part so far below it; a name stands right beside the lamp. */
function named(text: string, others: readonly object[], joints: readonly Point[] = []) {
  const lamp = { id: "P1", kind: "lamp", sheet: SHEET, at: [300, 300], turn: 0, unit: 10 };
  const parts = [lamp, ...others.map((one) => ({ sheet: SHEET, turn: 0, unit: 10, ...one }))];
  const job = { ...BLANK, diagram: { ...BLANK.diagram, parts, wires: [] } } as unknown as Job;
  const word: ReadWord = {
    id: "350,290",
    box: { left: 350, top: 290, right: 390, bottom: 310 },
    turn: 0,
    tall: 20,
    text,
    sure: 96,
    doubts: [],
    isPrint: true,
    others: [],
  };
  const [item] = wordItems(job, SHEET, [word], {}, joints);
  return item as WordItem;
}

test("a name that another kind's parts bear is never surely that of the part beside it", () => {
  const says = (text: string) => {
    const { targets, doubts } = named(text, []);
    return [targets[0]?.says, doubts];
  };
  expect(says("SP3")).toEqual([
    "P1 (lamp): name SP3",
    ["It looks like the name of a splice, and this is a lamp."],
  ]);
  expect(says("F3")).toEqual([
    "P1 (lamp): name F3",
    ["It looks like the name of a fuse, and this is a lamp."],
  ]);
  expect(says("W3")[1]).toEqual(["A name that begins with W is not usual for a lamp."]);
  for (const name of ["P3", "E3", "H3"]) expect(says(name)[1]).toEqual([]);
});

test("a splice's name goes past a nearer lamp to the splice, and waits at a joint that is not drawn", () => {
  const splice = { id: "X1", kind: "splice", at: [420, 340] };
  expect(named("SP3", [splice])).toMatchObject({
    targets: [{ says: "X1 (splice): name SP3" }, { ref: "P1" }],
    doubts: [],
  });
  const waiting = named("SP3", [], [[420, 340]]);
  expect(waiting).toMatchObject({ targets: [], state: "nowhere", waits: true });
  // Once its splice is drawn, or too far away, the joint counts no more.
  expect(named("SP3", [splice], [[421, 340]])).toMatchObject({ waits: false, state: "open" });
  expect(named("SP3", [], [[900, 340]]).waits).toBe(false);
  // A lamp's own name is none of it.
  expect(named("P3", [], [[400, 300]])).toMatchObject({ waits: false, doubts: [] });
  // What may be the part's own name as well can be written, after a look.
  const ground = { id: "X9", kind: "ground", at: [440, 320] };
  const either = named("X31", [ground], [[395, 305]]);
  expect(either.targets[0]?.says).toBe("X9 (ground): name X31");
  const atJoint = expect.stringContaining("joint of a line where no splice is drawn");
  expect(either.doubts).toEqual([atJoint]);
  // Of two such joints it is said once.
  const joints: readonly Point[] = [
    [395, 305],
    [395, 306],
  ];
  expect(named("X31", [ground], joints).doubts).toEqual([atJoint]);
});
