import { expect, test } from "vitest";
import { cavityFacts, describeCavity } from "../../../../src/editor/boards/plug/cavity-facts.ts";
import { viewFrom } from "../../../../src/plug/index.ts";
import type { ReadingDraft } from "../../../../src/session/index.ts";
import { analysisWith, fourWayJob } from "./sample.ts";

const facts = (
  change: (job: ReturnType<typeof fourWayJob>) => void = () => {},
  draft = null as ReadingDraft | null,
) => {
  const job = fourWayJob();
  change(job);
  const [plug] = job.plugs;
  if (!plug) throw new Error("the sample has a plug");
  const analysis = analysisWith(["A1:1", "contradicted"], ["A1:2", "agrees"]);
  return cavityFacts(job, "m1", "X1", viewFrom(plug, "mating"), analysis, draft);
};

test("the machine's colour goes before the diagram's, and each says whose it is", () => {
  expect(facts().map((one) => [one.mark, one.colour, one.colourFrom])).toEqual([
    ["1", { base: "BN", tracer: "BK" }, "machine"],
    ["2", { base: "RD", tracer: "WH" }, "diagram"],
    ["3", null, null],
    ["4", null, null],
  ]);
});

test("a cavity without a pin has no verdict", () => {
  expect(facts().map((one) => [one.pin, one.verdict])).toEqual([
    ["A1:1", "contradicted"],
    ["A1:2", "agrees"],
    [null, null],
    [null, null],
  ]);
});

test("another machine's colours are not shown", () => {
  const others = facts((job) => {
    const [machine] = job.machines;
    if (machine)
      job.machines.unshift({
        ...machine,
        id: "m0",
        wires: [{ cavity: "X1:3", colour: { base: "PK" } }],
      });
  });
  expect(others[2]?.colour).toBeNull();
  expect(others[0]?.colourFrom).toBe("machine");
});

test("a cavity is described in words: state, colour, tie, verdict and lead", () => {
  const draft: ReadingDraft = {
    quantity: "volts",
    red: "X1:1",
    black: "chassis",
    asks: null,
    when: {},
    with: "meter",
    value: "",
    note: "",
  };
  const described = facts((job) => {
    const cavities = job.plugs[0]?.cavities ?? [];
    Object.assign(cavities[2] ?? {}, { empty: true });
    Object.assign(cavities[3] ?? {}, { blocked: true });
  }, draft).map(describeCavity);
  expect(described).toEqual([
    "Cavity 1, brown with a black tracer, tied to A1:1, contradicted, red lead",
    "Cavity 2, red with a white tracer on the diagram, tied to A1:2, agrees",
    "Cavity 3, empty",
    "Cavity 4, blocked",
  ]);
});
