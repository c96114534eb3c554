import { expect, test } from "vitest";
import { elementsOf } from "../../../src/circuit/index.ts";
import { type Job, type PartOf, partSchema } from "../../../src/job/index.ts";
import {
  addModuleLoad,
  addModulePath,
  removeModuleLoad,
  removeModulePath,
  setBehaviourTold,
  setLeastVolts,
  setModuleLoad,
  setModulePath,
} from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const blank = drawing([
  {
    id: "A1",
    kind: "module",
    pins: [{ id: "1" }, { id: "2" }, { id: "3" }, { id: "4" }],
    power: { supply: ["1"], ground: ["2"] },
  } as never,
]);
const module = (job: Job) => found(job.diagram.parts, "A1") as PartOf<"module">;

test("a new path leads from the feed to a pin that carries none, and is one the format holds", () => {
  const job = edit(blank, (draft) => addModulePath(draft, "A1"));
  expect(module(job).behaviour).toEqual({ paths: [{ between: ["1", "3"], does: "always" }] });
  expect(partSchema.safeParse(module(job)).success).toBe(true);
});

test("a path's fields are set and taken away one by one", () => {
  let job = edit(blank, (draft) => addModulePath(draft, "A1"));
  job = edit(job, (draft) =>
    setModulePath(draft, "A1", 0, { does: "delay-on", input: "4", active: "low", seconds: 3 }),
  );
  expect(elementsOf(module(job), 24)[0]?.law).toMatchObject({
    is: "module-path",
    does: "delay-on",
    input: "4",
    active: "low",
    seconds: 3,
    power: { fedBy: ["1", "2"] },
  });
  job = edit(job, (draft) => setModulePath(draft, "A1", 0, { seconds: undefined }));
  expect(module(job).behaviour?.paths[0]).toEqual({
    between: ["1", "3"],
    does: "delay-on",
    input: "4",
    active: "low",
  });
  job = edit(job, (draft) => removeModulePath(draft, "A1", 0));
  // it is told to do nothing: that is another thing than not being known
  expect(module(job).behaviour).toEqual({ paths: [] });
  expect(edit(job, (draft) => setBehaviourTold(draft, "A1", false))).toEqual(blank);
});

test("a load lies between feed and ground at first, and goes without a trace", () => {
  let job = edit(blank, (draft) => addModuleLoad(draft, "A1"));
  job = edit(job, (draft) => setModuleLoad(draft, "A1", 0, { ohms: 120 }));
  expect(elementsOf(module(job), 24)[0]).toMatchObject({ a: "1", b: "2", law: { ohms: 120 } });
  job = edit(job, (draft) => removeModuleLoad(draft, "A1", 0));
  expect(module(job).behaviour).toEqual({ paths: [] });
});

test("the least volts are the module's own, or the usual share of nominal", () => {
  const told = edit(blank, (draft) => setLeastVolts(draft, "A1", 9));
  expect(module(told).power).toEqual({ supply: ["1"], ground: ["2"], minVolts: 9 });
  expect(edit(told, (draft) => setLeastVolts(draft, "A1", undefined))).toEqual(blank);
});

test("with fewer than two pins there is nothing to join", () => {
  const lone = drawing([{ id: "A1", kind: "module", pins: [{ id: "1" }] } as never]);
  expect(edit(lone, (draft) => addModulePath(draft, "A1"))).toBe(lone);
  expect(edit(lone, (draft) => addModuleLoad(draft, "A1"))).toBe(lone);
});
