import { expect, test } from "vitest";
import { checkJob, createChecker } from "../../src/check/index.ts";
import {
  applyEdit,
  type Colour,
  EMPTY_HISTORY,
  type Job,
  type Versioned,
} from "../../src/job/index.ts";
import { findingsOf, testExamplesOfPage } from "../support/check-example.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const RULE = "colour-changes";

testExamplesOfPage(RULE);

/** A lamp that its fuse feeds by way of `joint`; the wire before it is red, that behind it blue. */
function lampBehind(
  from: string,
  to: string,
  joint: (circuit: CircuitBuilder) => CircuitBuilder,
  colours: readonly [Colour, Colour] = [{ base: "RD" }, { base: "BU" }],
): Job {
  const { job } = joint(withBattery().part("fuse", "F1", { amps: 10 }).part("lamp", "P1")).wire(
    "G1:+ F1:1",
    "P1:2 GND1:1",
    `F1:2 ${from}`,
    `${to} P1:1`,
  );
  for (const wire of job.diagram.wires) {
    if (wire.to === from) wire.colour = colours[0];
    if (wire.from === to) wire.colour = colours[1];
  }
  return job;
}

const pageEnds = (circuit: CircuitBuilder) =>
  circuit.part("offpage", "XP1", { label: "2/B4" }).part("offpage", "XP2", { label: " 2/b4 " });

test("names both ends, both wires and both colours where a line goes on in another colour", () => {
  const [found, ...more] = findingsOf(RULE, lampBehind("XP1:1", "XP2:1", pageEnds));
  expect(more).toEqual([]);
  expect(found?.severity).toBe("note");
  expect(found?.subjects.slice(0, 2)).toEqual(["XP1:1", "XP2:1"]);
  expect(found?.message).toMatch(/XP1 to XP2 is RD .* and BU /);
});

test("is silent where the colour goes on, or only base and tracer are exchanged", () => {
  const turned: [Colour, Colour] = [
    { base: "RD", tracer: "BU" },
    { base: "BU", tracer: "RD" },
  ];
  expect(findingsOf(RULE, lampBehind("XP1:1", "XP2:1", pageEnds, turned))).toEqual([]);
  const earth: [Colour, Colour] = [{ base: "GNYE" }, { base: "GN", tracer: "YE" }];
  expect(findingsOf(RULE, lampBehind("XP1:1", "XP2:1", pageEnds, earth))).toEqual([]);
});

test.each<[string, string, string, (circuit: CircuitBuilder) => CircuitBuilder]>([
  ["a splice", "SP1:1", "SP1:1", (one) => one.part("splice", "SP1")],
  ["a plug", "X9:1", "X9:1", (one) => one.part("inline", "X9", { pins: [{ id: "1" }] })],
  ["a module's pin", "A1:1", "A1:1", (one) => one.module("A1", { "1": null })],
  ["a stud of a part", "F1:1", "F1:1", (one) => one],
  ["a switch", "S1:1", "S1:2", (one) => one.contact("S1", "operator")],
])("is silent where the colours meet at %s", (_what, from, to, joint) => {
  expect(findingsOf(RULE, lampBehind(from, to, joint))).toEqual([]);
});

test("is silent where a label stands for a rail that branches", () => {
  const third = (circuit: CircuitBuilder) =>
    pageEnds(circuit).part("offpage", "XP3", { label: "2/B4" });
  expect(findingsOf(RULE, lampBehind("XP1:1", "XP2:1", third))).toEqual([]);
  const branch = (circuit: CircuitBuilder) =>
    pageEnds(circuit).part("lamp", "P2").wire("XP1:1 P2:1", "P2:2 GND1:1");
  expect(findingsOf(RULE, lampBehind("XP1:1", "XP2:1", branch))).toEqual([]);
});

test("is silent where a colour is not drawn, or the labels are not the same or not written", () => {
  const job = lampBehind("XP1:1", "XP2:1", pageEnds);
  const wire = job.diagram.wires.find(({ to }) => to === "XP1:1");
  if (wire) delete wire.colour;
  const apart = (a: string, b: string) => (circuit: CircuitBuilder) =>
    circuit.part("offpage", "XP1", { label: a }).part("offpage", "XP2", { label: b });
  expect([
    ...findingsOf(RULE, job),
    ...findingsOf(RULE, lampBehind("XP1:1", "XP2:1", apart("2/B4", "2/B5"))),
    ...findingsOf(RULE, lampBehind("XP1:1", "XP2:1", apart("", ""))),
  ]).toEqual([]);
});

test("follows what is edited: colour, label, a branch, and each of them back", () => {
  const checker = createChecker("machine1");
  let now: Versioned = { job: lampBehind("XP1:1", "XP2:1", pageEnds), history: EMPTY_HISTORY };
  const wire = (draft: Job, end: string) =>
    draft.diagram.wires.find(({ from, to }) => [from, to].includes(end));
  const end = (draft: Job) =>
    draft.diagram.parts.find(({ id }) => id === "XP2") as { label: string };
  const colour = (base: Colour["base"]) => (draft: Job) => {
    const found = wire(draft, "XP2:1");
    if (found) found.colour = { base };
  };
  const steps: readonly (readonly [told: number, change: (draft: Job) => void])[] = [
    [1, () => {}],
    [0, colour("RD")],
    [1, colour("GN")],
    [0, (draft) => Object.assign(end(draft), { label: "3/A1" })],
    [1, (draft) => Object.assign(end(draft), { label: "2/B4" })],
    [0, (draft) => draft.diagram.wires.push({ id: "W99", from: "XP1:1", to: "P1:2" })],
    [1, (draft) => draft.diagram.wires.pop()],
  ];
  for (const [told, change] of steps) {
    now = applyEdit(now, "Step", (draft) => {
      draft.title += "!";
      change(draft);
    });
    const { findings } = checker.check(now.job);
    expect(findings.filter(({ rule }) => rule === RULE)).toHaveLength(told);
    expect(findings).toEqual(checkJob(structuredClone(now.job), "machine1").findings);
  }
});
