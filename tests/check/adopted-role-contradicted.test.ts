import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import type { Job } from "../../src/job/index.ts";
import {
  findingsOf,
  lampModule,
  matched,
  onMachine,
  reading,
  testExamplesOfPage,
} from "../support/check-example.ts";

const RULE = "adopted-role-contradicted";

const adopting = (job: Job, ...adopted: NonNullable<Job["adopted"]>): Job => ({ ...job, adopted });

testExamplesOfPage(RULE);

test("names both roles and the path, and offers the circuit's role or none", () => {
  const job = adopting(lampModule({ "1": "OUT" }).job, { pin: "A1:1", role: "ground" });
  const [found, ...more] = findingsOf(RULE, job);
  expect(more).toEqual([]);
  expect(found?.message).toMatch(/adopted as a ground.*permanent feed/);
  expect(found?.because).toEqual(["W3", "F1", "W2", "G1"]);
  expect(found?.corrections).toEqual([
    { does: "adopt-role", pin: "A1:1", role: "supply" },
    { does: "drop-role", pin: "A1:1" },
  ]);
});

test("an adopted role that fits takes the place of the word for every rule", () => {
  const { job } = lampModule({ "1": "GND", "2": "B+", "3": "OUT" });
  const before = checkJob(job, "machine1").findings.map(({ rule }) => rule);
  expect(before).toEqual([
    "printed-role-contradicted",
    "printed-role-contradicted",
    "printed-roles-rearranged",
  ]);
  const after = adopting(job, { pin: "A1:1", role: "supply" }, { pin: "A1:2", role: "ground" });
  expect(checkJob(after, "machine1").findings).toEqual([]);
  // The word itself is as wrong as before.
  expect(
    checkJob(after, "machine1").roles.map(({ verdict, adopted }) => [verdict, adopted]),
  ).toEqual([
    ["contradicted", "supply"],
    ["contradicted", "ground"],
    ["agrees", undefined],
  ]);
});

test("a meter that contradicts the adopted role says so", () => {
  const job = onMachine(matched(lampModule({ "1": "OUT" })), {
    readings: [reading("R1", 25, { with: "test-lamp" })],
  });
  const rule = "reading-contradicts-printed";
  expect(findingsOf(rule, adopting(job, { pin: "A1:1", role: "supply" }))).toEqual([]);
  const untraced: Job = {
    ...job,
    diagram: { ...job.diagram, wires: job.diagram.wires.filter(({ id }) => id !== "W3") },
  };
  const open: Job = {
    ...untraced,
    diagram: {
      ...untraced.diagram,
      parts: [
        ...untraced.diagram.parts,
        { kind: "offpage", id: "X9", sheet: "sheet1", at: [0, 0], turn: 0 },
      ],
      wires: [...untraced.diagram.wires, { id: "W9", from: "A1:1", to: "X9:1" }],
    },
  };
  const [found] = findingsOf(rule, adopting(open, { pin: "A1:1", role: "ground" }));
  expect(found?.message).toContain("The role adopted there is a ground.");
  expect(found?.corrections).toEqual([{ does: "drop-role", pin: "A1:1" }]);
});

test("what is adopted for one machine is no word on another", () => {
  const job = adopting(lampModule({ "1": "OUT" }).job, {
    pin: "A1:1",
    role: "ground",
    machine: "another",
  });
  expect(findingsOf(RULE, job)).toEqual([]);
  expect(findingsOf("printed-role-contradicted", job)).toHaveLength(1);
});
