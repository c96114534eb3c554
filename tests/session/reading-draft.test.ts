import { expect, test } from "vitest";
import { newJob } from "../../src/job/index.ts";
import {
  draftFor,
  draftOf,
  lacking,
  newDraft,
  placeProbe,
  pressKey,
  readingOf,
  setSwitch,
  swapLeads,
  togglePlugged,
} from "../../src/session/index.ts";

const AT = "2025-11-14T10:42:00.000Z";
const type = (...keys: string[]) => keys.reduce(pressKey, "");

test.each<[string[], string]>([
  [["1", "2", ".", "4"], "12.4"],
  [["1", ".", ".", "5"], "1.5"],
  [["."], "0."],
  [["4", "k", "7"], "4k7"],
  [["k"], ""],
  [["4", "k", "k"], "4k"],
  [["4", "k", "."], "4k"],
  [["OL"], "OL"],
  [["OL", "7"], "7"],
  [["OL", "back"], "O"],
  [["5", "−"], "-5"],
  [["5", "−", "−"], "5"],
  [["−", "5"], "-5"],
  [["OL", "−", "3"], "-3"],
  [["1", "2", "back", "3"], "13"],
  [["1", "2", "clear"], ""],
])("the keys %j type %j", (keys, text) => {
  expect(type(...keys)).toBe(text);
});

test("a pad says what it still lacks, in the order in which one does it", () => {
  const draft = newDraft();
  expect(draft.asks).toBe("red");
  expect(lacking(draft)).toBe("Tap where the red lead goes.");
  expect(lacking({ ...draft, red: "X1:4" })).toBe("Type what the meter shows.");
  expect(lacking({ ...draft, red: "chassis", value: "1" })).toBe(
    "Both leads are on the same place.",
  );
  expect(lacking({ ...draft, red: "X1:4", value: "12,4" })).toBeNull();
});

test("what a pad asks for is what the next tap does", () => {
  const draft = newDraft();
  const black = { ...draft, asks: "black" as const };
  expect(lacking(black)).toBe("Tap where the black lead goes.");
  expect(placeProbe(black, "X1:2")).toMatchObject({ black: "X1:2", red: null, asks: "red" });
  const none = { ...draft, asks: null };
  expect(placeProbe(none, "X1:2")).toBe(none);
  expect(lacking(none)).toBe("Tap the red lead, then where it goes.");
  const swapped = swapLeads(draft);
  expect(swapped).toMatchObject({ red: "chassis", black: null, asks: "black" });
  expect(lacking(swapped)).toBe("Tap where the black lead goes.");
  expect(swapLeads(swapped)).toEqual(draft);
});

test("what is kept is the reading in full, at the first free id, without what is at rest", () => {
  const job = newJob("t", 24);
  const taken = { id: "R1", quantity: "volts", red: "X1:1", black: "chassis", value: 1, when: {} };
  job.machines[0]?.readings.push(taken as never);
  let { when } = newDraft();
  when = setSwitch(when, "S1", "RUN", "OFF");
  when = setSwitch(when, "S2", "ON", "OFF");
  when = setSwitch(when, "S2", "OFF", "OFF");
  when = togglePlugged(when, "A1");
  when = { ...when, engine: "off", removed: [] };
  const draft = { ...newDraft("X1:4"), when, value: "12,4v", note: " hot " };
  expect(readingOf(draft, job, AT)).toEqual({
    id: "R2",
    quantity: "volts",
    red: "X1:4",
    black: "chassis",
    value: 12.4,
    when: { switches: { S1: "RUN" }, unplugged: ["A1"] },
    at: AT,
    note: "hot",
  });
});

test("nothing is kept while something is lacking", () => {
  expect(readingOf({ ...newDraft(), value: "12" }, newJob("t", 24), AT)).toBeNull();
  expect(readingOf({ ...newDraft("X1:1"), value: "OL" }, newJob("t", 24), AT)).toBeNull();
});

test("a reading goes back on the pad with its value to be mended, without it to be repeated", () => {
  const job = newJob("t", 24);
  const setup = draftFor({
    quantity: "ohms",
    red: "X1:4",
    black: "chassis",
    when: { unplugged: ["A1"] },
  });
  const reading = readingOf({ ...setup, value: "OL", with: "test-lamp", note: "n" }, job, AT);
  if (!reading) throw new Error("a reading");
  expect(draftOf(reading, true)).toMatchObject({ value: "OL", note: "n", with: "test-lamp" });
  expect(draftOf(reading, false)).toMatchObject({ value: "", note: "", quantity: "ohms" });
});
