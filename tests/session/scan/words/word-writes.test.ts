import { produce } from "immer";
import { expect, test } from "vitest";
import { seededRandom } from "../../../../src/base/index.ts";
import type { Job } from "../../../../src/job/index.ts";
import {
  isWritten,
  sayWrite,
  type WordWrite,
  whyNotWrite,
  writeAll,
} from "../../../../src/session/scan/words/word-writes.ts";
import { sweeperJob } from "../../../support/wordless-sweeper.ts";

const JOB = sweeperJob();

function wrote(writes: readonly WordWrite[]): { job: Job; renames: ReadonlyMap<string, string> } {
  let renames: ReadonlyMap<string, string> = new Map();
  const job = produce(JOB, (draft) => {
    renames = writeAll(draft as Job, writes);
  });
  return { job, renames };
}

const name = (ref: string, value: string): WordWrite => ({ field: "name", ref, value });
const idsOf = ({ diagram }: Job) => diagram.parts.map(({ id }) => id);

test("a name that another part bears is exchanged with it, wherever the job speaks of the two", () => {
  const { job, renames } = wrote([name("F1", "F2")]);
  const swap = (id: string) => (id === "F1" ? "F2" : id === "F2" ? "F1" : id);
  expect(idsOf(job)).toEqual(idsOf(JOB).map(swap));
  const ends = ({ diagram }: Job) => diagram.wires.map(({ from, to }) => [from, to]);
  const swapped = (ref: string) => ref.replace(/^(F1|F2):/, (_, id) => `${swap(id)}:`);
  expect(ends(job)).toEqual(ends(JOB).map((both) => both.map(swapped)));
  expect([...renames]).toEqual(
    expect.arrayContaining([
      ["F1", "F2"],
      ["F2", "F1"],
    ]),
  );
});

test("many names at once, in rings and chains, all come out as wanted", () => {
  const random = seededRandom(7);
  const free = ["Z1", "Z2", "Z3", "Z4"];
  for (let n = 0; n < 8; n++) {
    const left = [...idsOf(JOB), ...free];
    const wanted = idsOf(JOB)
      .filter(() => random.chance(0.6))
      .map((old) => name(old, left.splice(random.below(left.length), 1)[0] as string));
    const { job } = wrote(wanted);
    const now = idsOf(job);
    expect(new Set(now).size).toBe(now.length);
    for (const [index, { id }] of JOB.diagram.parts.entries()) {
      const want = wanted.find(({ ref }) => ref === id);
      if (want) expect(now[index], id).toBe(want.value);
    }
    expect(now.some((id) => id.includes("~"))).toBe(false);
  }
});

test("fields are written to what bears them, before anything gets another name", () => {
  const { job } = wrote([
    name("F1", "F9"),
    { field: "amps", ref: "F1", value: 80 },
    { field: "label", ref: "M1", value: "PUMP" },
    { field: "printed", ref: "A1:3", value: "RUN" },
    { field: "mark", ref: "A1:6", value: "7" },
    { field: "number", ref: "W5", value: "99-1" },
    { field: "colour", ref: "W5", value: { base: "BU", tracer: "WH" } },
    { field: "mm2", ref: "W5", value: 2.5 },
  ]);
  const parts = new Map(job.diagram.parts.map((part) => [part.id, part]));
  expect(parts.get("F9")).toMatchObject({ amps: 80 });
  expect(parts.get("M1")).toMatchObject({ label: "PUMP" });
  const module = parts.get("A1");
  expect(module?.kind === "module" && module.pins.map(({ id, printed }) => [id, printed])).toEqual(
    expect.arrayContaining([
      ["3", "RUN"],
      ["7", "LP"],
    ]),
  );
  expect(job.diagram.wires.find(({ id }) => id === "W5")).toMatchObject({
    number: "99-1",
    colour: { base: "BU", tracer: "WH" },
    mm2: 2.5,
  });
});

test("a name that a wire or plug bears, and a mark that the part has, are refused with a sentence", () => {
  expect(whyNotWrite(JOB, name("F1", "F2"))).toBeNull();
  expect(whyNotWrite(JOB, name("F1", "W5"))).toBe("W5 is in use already.");
  expect(whyNotWrite(JOB, { field: "mark", ref: "A1:6", value: "3" })).toBe(
    "A1 has a pin 3 already.",
  );
});

test("what stands there already counts as written, capitals or not in words", () => {
  expect(isWritten(JOB, { field: "label", ref: "M1", value: "WATER PUMP" })).toBe(true);
  expect(isWritten(JOB, { field: "printed", ref: "A1:3", value: "TRIG" })).toBe(true);
  expect(isWritten(JOB, { field: "printed", ref: "A1:3", value: "OUT" })).toBe(false);
  expect(isWritten(JOB, name("F1", "F1"))).toBe(true);
});

test("a write is told in a user's words", () => {
  expect(sayWrite({ field: "mm2", ref: "W5", value: 2.5 })).toBe("size 2.5 mm²");
  expect(sayWrite({ field: "awg", ref: "W5", value: 14 })).toBe("size AWG 14");
  expect(sayWrite({ field: "colour", ref: "W5", value: { base: "RD", tracer: "WH" } })).toBe(
    "colour RDWH",
  );
});
