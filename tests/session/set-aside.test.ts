import { expect, test } from "vitest";
import { checkJob, type Finding } from "../../src/check/index.ts";
import { type Job, readJobText, writeJobText } from "../../src/job/index.ts";
import {
  bringFindingBack,
  createSession,
  removeModulePin,
  removeThings,
  renameMark,
  renamePart,
  renamePin,
  type Session,
  setFindingAside,
} from "../../src/session/index.ts";
import { lampModule, matched, onMachine, reading } from "../support/check-example.ts";

const found = (session: Session, rule: string): Finding => {
  const { job, machine } = session.get();
  const finding = checkJob(job, machine).findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(`${rule} does not speak`);
  return finding;
};

const RULE = "printed-role-contradicted";
const open = (job: Job = matched(lampModule({ "1": "GND" })).job) => createSession("aside", job);

test("set aside, changed, set aside again, brought back: each one edit that undo takes back", () => {
  const session = open();
  const before = session.get().job;
  setFindingAside(session, found(session, RULE), "  built so  ", "2026-11-26T10:00:00+01:00");
  const [entry] = session.get().job.setAside ?? [];
  expect(entry).toEqual({
    rule: RULE,
    subjects: ["A1:1", "X1:1"],
    message: found(session, RULE).message,
    because: ["W3", "F1", "W2", "G1"],
    reason: "built so",
    at: "2026-11-26T10:00:00+01:00",
  });
  expect(session.get().history.done.map(({ label }) => label)).toEqual([
    "Set aside printed-role-contradicted (A1:1)",
  ]);
  expect(found(session, RULE).setAside).toBe("built so");
  expect(readJobText(writeJobText(session.get().job))).toMatchObject({ ok: true });

  // The feed is taken from before the fuse: another path, another message.
  session.edit("Redraw", (draft) => {
    const wire = draft.diagram.wires.find(({ id }) => id === "W3");
    if (wire) wire.from = "G1:+";
  });
  expect(found(session, RULE)).toMatchObject({ setAsideBefore: "built so" });
  expect(found(session, RULE).setAside).toBeUndefined();
  setFindingAside(session, found(session, RULE), "still so");
  expect(session.get().job.setAside).toHaveLength(1);
  expect(found(session, RULE).setAside).toBe("still so");

  bringFindingBack(session, found(session, RULE));
  expect(session.get().job.setAside).toBeUndefined();
  expect(found(session, RULE).setAside).toBeUndefined();
  expect(session.get().history.done).toHaveLength(4);
  for (let step = 0; step < 4; step++) session.undo();
  expect(session.get().job).toEqual(before);
});

test("without a reason nothing is set aside", () => {
  const session = open();
  const { job } = session.get();
  setFindingAside(session, found(session, RULE), " \n ");
  expect(session.get().job).toBe(job);
});

test("what rests on one machine's readings or changes is set aside for that machine", () => {
  const scope = (job: Job, rule: string) => {
    const session = open(job);
    setFindingAside(session, found(session, rule), "known");
    return session.get().job.setAside?.map(({ machine }) => machine);
  };
  const read = onMachine(matched(lampModule()), { readings: [reading("R1", 3)] });
  expect(scope(read, "reading-unexpected")).toEqual(["machine1"]);
  const changed = onMachine(lampModule({ "1": "GND" }), {
    changes: [{ note: "Lamp taken out", without: ["P1"] }],
  });
  expect(scope(changed, RULE)).toEqual(["machine1"]);
  expect(scope(lampModule({ "1": "GND" }).job, RULE)).toEqual([undefined]);
});

test("things that get another name keep what was said of them", () => {
  const session = open({
    ...matched(lampModule({ "1": "GND" })).job,
    adopted: [{ pin: "A1:2", role: "ground" }],
  });
  setFindingAside(session, found(session, RULE), "so");
  session.edit("Rename", (draft) => renamePart(draft, "A1", "A7"));
  session.edit("Rename", (draft) => renamePart(draft, "F1", "F7"));
  session.edit("Rename", (draft) => renamePin(draft, "A7", "1", "a"));
  session.edit("Rename", (draft) => renameMark(draft, { plug: "X1", index: 0 }, "A"));
  const { adopted, setAside } = session.get().job;
  expect(adopted).toEqual([{ pin: "A7:2", role: "ground" }]);
  expect(setAside?.[0]).toMatchObject({
    subjects: ["A7:a", "X1:A"],
    because: ["W3", "F7", "W2", "G1"],
  });
  // The message names what has another name now: the user is asked again, and told why not before.
  expect(found(session, RULE).setAsideBefore).toBe("so");
});

test("what is taken out takes what was said of it along", () => {
  const said = (change: (draft: Job) => void) => {
    const session = open({
      ...matched(lampModule({ "1": "GND" })).job,
      adopted: [{ pin: "A1:1", role: "ground" }],
    });
    setFindingAside(session, found(session, RULE), "so");
    session.edit("Take out", change);
    const { adopted, setAside } = session.get().job;
    return [adopted, setAside];
  };
  expect(said((draft) => removeThings(draft, ["A1"]))).toEqual([undefined, undefined]);
  expect(said((draft) => removeModulePin(draft, "A1", "1"))).toEqual([undefined, undefined]);
  expect(said((draft) => removeThings(draft, ["P1"])).map((list) => list?.length)).toEqual([1, 1]);
});

test("a module that one machine is without keeps what was said of it on the others", () => {
  const job: Job = {
    ...matched(lampModule({ "1": "GND" })).job,
    adopted: [{ pin: "A1:2", role: "ground" }],
  };
  const session = open(job);
  setFindingAside(session, found(session, RULE), "so");
  session.show({ recording: { machine: "machine1", change: 0, note: "Module taken out" } });
  session.edit("Take out", (draft) => removeThings(draft, ["A1"]));
  expect(session.get().job.machines[0]?.changes?.[0]?.without).toEqual(["A1"]);
  expect(session.get().job.adopted).toEqual(job.adopted);
  expect(session.get().job.setAside).toHaveLength(1);
});
