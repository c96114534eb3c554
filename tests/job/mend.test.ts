import { expect, test } from "vitest";
import { type Job, mendReferences, referenceIssues } from "../../src/job/index.ts";
import { type Loose, looseJob, smallJob } from "./small-job.ts";

const spoiled = (spoil: (job: Loose) => void): Job => {
  const job = looseJob();
  spoil(job);
  return job;
};

test("a sound job comes back as it is", () => {
  const job = smallJob();
  expect(mendReferences(job).job).toBe(job);
});

test("what hangs on a deleted part goes, and nothing else", () => {
  const job = spoiled((j) => j.diagram.parts.splice(3, 1));
  const { job: mended, left } = mendReferences(job);
  expect(left).toEqual([]);
  expect(referenceIssues(mended)).toEqual([]);
  expect(mended.diagram.wires.map(({ id }) => id)).toEqual(["W1"]);
  expect(mended.links).toEqual([]);
  expect(mended.machines).toEqual(job.machines);
  expect(mended.diagram.parts).toEqual(job.diagram.parts);
});

test("what hangs on a deleted cavity goes", () => {
  const { job } = mendReferences(spoiled((j) => j.plugs[0].cavities.splice(0, 1)));
  expect(job.links).toEqual([{ pin: "A1:2", cavity: "X1:2" }]);
  expect(job.machines[0]?.wires).toEqual([]);
});

test("parts on a deleted sheet get an empty one under them", () => {
  const { job } = mendReferences(spoiled((j) => (j.diagram.sheets = [])));
  expect(job.diagram.sheets).toEqual([{ id: "sheet1" }]);
  expect(job.diagram.parts).toHaveLength(6);
});

test("a switch forgets positions that it no longer has, and a module pins", () => {
  const job = spoiled((j) => {
    j.diagram.parts[2].positions = ["on"];
    j.diagram.parts[3].pins.shift();
    j.diagram.parts[3].sources = [{ between: ["1", "2"], volts: 5, ohms: 1 }];
  });
  const { job: mended, left } = mendReferences(job);
  expect(left).toEqual([]);
  expect(mended.diagram.parts[2]).not.toHaveProperty("rest");
  expect(mended.diagram.parts[3]).toMatchObject({
    power: { supply: [], ground: ["2"] },
    sources: [],
  });
});

test("more faults than are reported at once are all mended", () => {
  const job = spoiled((j) => {
    for (let n = 0; n < 300; n++) j.links.push({ pin: "A9:1", cavity: "X1:1" });
  });
  expect(mendReferences(job).job.links).toHaveLength(2);
});

test("two things with one id are left for the user to tell apart", () => {
  const { left } = mendReferences(spoiled((j) => (j.plugs[0].id = "F1")));
  expect(left.map(({ code }) => code)).toContain("duplicate-id");
});
