import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createJobDesk, NO_JOB } from "../../../src/editor/app/job-desk.ts";
import { rescue } from "../../../src/editor/app/rescue.ts";
import { newJob, writeJobText, writePintruth } from "../../../src/job/index.ts";
import { createSession, keepSaved } from "../../../src/session/index.ts";
import { memoryJobStore, UnreadableJob, type VisitStore } from "../../../src/store/index.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);
const fileOf = (name: string, text: string) => ({ name, bytes: bytesOf(text), handle: null });
const demo = () => writePintruth(newJob("The demo", 24), new Map());

function visit(store: VisitStore = memoryJobStore()) {
  const session = createSession(NO_JOB, newJob("New job", 24));
  const saving = keepSaved(session, store, {
    now: () => "2024-05-01T08:00:00.000Z",
    wait: () => new Promise(() => {}),
  });
  return { session, store, saving, desk: createJobDesk(session, store, saving) };
}

const rename = (session: ReturnType<typeof visit>["session"], title: string) =>
  session.edit("Rename", (draft) => {
    draft.title = title;
  });

beforeEach(() => {
  vi.stubGlobal(
    "fetch",
    vi.fn(async () => new Response(demo() as BodyInit)),
  );
});
afterEach(() => {
  vi.unstubAllGlobals();
});

test("a first visit opens the demo and keeps it in the list", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  expect(session.get().job.title).toBe("The demo");
  expect((await store.list()).map((job) => job.title)).toEqual(["The demo"]);
});

test("a later visit opens the job that was open last, not the newest and not the demo", async () => {
  const first = visit();
  await first.desk.start();
  const older = first.session.get().key;
  await first.desk.create();
  await first.desk.open(older);
  const second = visit(first.store);
  await second.desk.start();
  expect(second.session.get().key).toBe(older);
  expect(fetch).toHaveBeenCalledTimes(1);
});

test("without the demo and without a store there is still a job to work on, and a word why", async () => {
  vi.stubGlobal("fetch", async () => new Response("", { status: 404 }));
  const { session, desk } = visit();
  await desk.start();
  expect(session.get().key).not.toBe(NO_JOB);
  expect(session.get().notice?.tone).toBe("error");
});

test("a job file is opened as one more job of the list", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  await desk.openFile(fileOf("lamp.json", writeJobText(newJob("Lamp", 12))), []);
  expect(session.get().job).toMatchObject({ title: "Lamp", systemVoltage: 12 });
  expect(new Set((await store.list()).map((job) => job.title))).toEqual(
    new Set(["The demo", "Lamp"]),
  );
});

test("a bad file is answered with the path to its fault, and the open job stays as it is", async () => {
  const { session, desk } = visit();
  await desk.start();
  rename(session, "Half done");
  const before = session.get();
  const bad = { ...newJob("Bad", 24), systemVoltage: "24" };
  await desk.openFile(fileOf("bad.json", JSON.stringify(bad)), []);
  const after = session.get();
  expect(after.notice).toMatchObject({ tone: "error" });
  expect(after.notice?.text).toContain("bad.json");
  expect(after.notice?.text).toContain("systemVoltage");
  expect({ ...after, notice: null }).toEqual({ ...before, notice: null });
  expect(after.history.done).toHaveLength(1);
});

test("the open job's last edit is in the store before another job opens", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  const { key } = session.get();
  rename(session, "Last word");
  await desk.create();
  expect((await store.load(key))?.title).toBe("Last word");
});

test("when the open job cannot be saved, no other takes its place", async () => {
  const store = memoryJobStore();
  const { session, desk } = visit(store);
  await desk.start();
  store.save = async () => {
    throw new Error("the disk is full");
  };
  rename(session, "Must not be lost");
  await desk.create();
  expect(session.get().job.title).toBe("Must not be lost");
  expect(session.get().notice?.text).toContain("the disk is full");
});

test("renaming the open job is an edit that undo takes back; another's is saved as it is", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  const demoKey = session.get().key;
  await desk.rename(demoKey, "Sweeper 15");
  expect(session.get().job.title).toBe("Sweeper 15");
  session.undo();
  expect(session.get().job.title).toBe("The demo");
  await desk.create();
  await desk.rename(demoKey, "Sweeper 16");
  expect((await store.load(demoKey))?.title).toBe("Sweeper 16");
});

test("a copy holds what was typed a moment ago and leaves the open job open", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  rename(session, "Pump");
  await desk.duplicate(session.get().key);
  expect(session.get().job.title).toBe("Pump");
  expect((await store.list()).map((job) => job.title)).toContain("Copy of Pump");
});

test("deleting the open job opens another, and deleting the last one starts afresh", async () => {
  const { session, store, desk } = visit();
  await desk.start();
  const demoKey = session.get().key;
  await desk.create();
  await desk.remove(session.get().key);
  expect(session.get().key).toBe(demoKey);
  await desk.remove(demoKey);
  expect(session.get().job.title).toBe("New job");
  expect(await store.load(demoKey)).toBeNull();
});

test("a last job that cannot be read does not keep the others from opening, and is not lost", async () => {
  const first = visit();
  await first.desk.start();
  const good = first.session.get().key;
  await first.desk.create();
  const bad = first.session.get().key;
  const { load } = first.store;
  const store: VisitStore = {
    ...first.store,
    load: async (key) => {
      if (key === bad) throw new UnreadableJob(key, [], "{");
      return load(key);
    },
  };
  const { session, desk } = visit(store);
  await desk.start();
  expect(session.get().key).toBe(good);
  expect(session.get().notice?.tone).toBe("error");
  expect((await store.list()).map((job) => job.key)).toContain(bad);
});

test("edits that the store had not yet when the page went away are there at the next visit", async () => {
  const first = visit();
  await first.desk.start();
  const { key, job } = first.session.get();
  rescue(key, { ...job, title: "Typed last" }, first.saving.builtUpon());
  const second = visit(first.store);
  await second.desk.start();
  expect(second.session.get().job.title).toBe("Typed last");
  expect((await first.store.load(key))?.title).toBe("Typed last");
});

test("what was rescued does not overwrite a save of another window, and is taken back only once", async () => {
  const first = visit();
  await first.desk.start();
  const { key, job } = first.session.get();
  const upon = first.saving.builtUpon();
  rename(first.session, "Saved since");
  await first.saving.flush();
  rescue(key, { ...job, title: "Typed last" }, upon);
  const second = visit(first.store);
  await second.desk.start();
  expect(second.session.get().job.title).toBe("Saved since");
  expect(new Set((await first.store.list()).map((one) => one.title))).toEqual(
    new Set(["Saved since", "Typed last (other window)"]),
  );
  expect(localStorage.length).toBe(0);
});
