import { expect, test } from "vitest";
import {
  commandNamed,
  createSession,
  link,
  linkBetween,
  proposeByMarks,
  unlink,
} from "../../src/session/index.ts";
import { smallJob } from "./support/small-job.ts";

test("tying a pin lets go of what it and the cavity were tied to before", () => {
  const session = createSession("one", smallJob());
  session.edit("Tie A1:1 to X1:2", (draft) => link(draft, "A1:1", "X1:2"));
  expect(session.get().job.links).toEqual([{ pin: "A1:1", cavity: "X1:2" }]);
});

test("tying what is tied already is no edit", () => {
  const session = createSession("one", smallJob());
  session.edit("Tie A1:1 to X1:1", (draft) => link(draft, "A1:1", "X1:1"));
  expect(session.get().history.done).toEqual([]);
});

test("unknown fields of a link survive the tying of others", () => {
  const job = smallJob();
  Object.assign(job.links[0] ?? {}, { seen: "2024" });
  const session = createSession("one", job);
  session.edit("Tie A1:3 to X1:3", (draft) => link(draft, "A1:3", "X1:3"));
  expect(session.get().job.links[0]).toMatchObject({ pin: "A1:1", seen: "2024" });
});

test("untying works from either end", () => {
  const session = createSession("one", smallJob());
  session.edit("Untie", (draft) => unlink(draft, "X1:1"));
  session.edit("Untie", (draft) => unlink(draft, "A1:2"));
  expect(session.get().job.links).toEqual([]);
  session.edit("Untie", (draft) => unlink(draft, "A1:2"));
  expect(session.get().history.done).toHaveLength(2);
});

test("a drag ties a module's pin and a cavity whichever way it goes, and nothing else", () => {
  const job = smallJob();
  expect(linkBetween(job, "A1:3", "X1:3")).toEqual({ pin: "A1:3", cavity: "X1:3" });
  expect(linkBetween(job, "X1:3", "A1:3")).toEqual({ pin: "A1:3", cavity: "X1:3" });
  expect(linkBetween(job, "P1:1", "X1:3")).toBeNull();
  expect(linkBetween(job, "X1:2", "X1:3")).toBeNull();
});

test("equal marks are proposed only where pin and cavity are both free", () => {
  expect(proposeByMarks(smallJob(), "A1", "X1")).toEqual([{ pin: "A1:3", cavity: "X1:3" }]);
});

test("marks are compared without case and blanks; a doubled mark is proposed to nobody", () => {
  const job = smallJob();
  job.links = [];
  const [plug] = job.plugs;
  const [module] = job.diagram.parts.filter((part) => part.kind === "module");
  if (!plug || !module) throw new Error("the small job has a plug and a module");
  module.pins = [{ id: "a" }, { id: "B " }, { id: "C" }];
  plug.cavities = ["A", "b", "C", "C"].map((mark) => ({ mark, at: [0, 0] }));
  expect(proposeByMarks(job, "A1", "X1")).toEqual([
    { pin: "A1:a", cavity: "X1:A" },
    { pin: "A1:B ", cavity: "X1:b" },
  ]);
});

test("no cavity that is empty or blocked is proposed", () => {
  const job = smallJob();
  job.links = [];
  const [plug] = job.plugs;
  Object.assign(plug?.cavities[0] ?? {}, { empty: true });
  Object.assign(plug?.cavities[1] ?? {}, { blocked: true });
  expect(proposeByMarks(job, "A1", "X1")).toEqual([{ pin: "A1:3", cavity: "X1:3" }]);
});

test("the command ties all proposals in one step that undo takes back", () => {
  const job = smallJob();
  job.links = [];
  const session = createSession("one", job);
  const command = commandNamed("match-by-marks");
  expect(command.detail?.(session)).toBe("3 to tie");
  command.run(session);
  expect(session.get().job.links).toHaveLength(3);
  expect(command.canRun(session)).toBe(false);
  session.undo();
  expect(session.get().job.links).toEqual([]);
});
