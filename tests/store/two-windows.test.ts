import { beforeAll, describe, expect, test, vi } from "vitest";
import { newJob } from "../../src/job/index.ts";
import { createSession, keepSaved } from "../../src/session/index.ts";
import { memoryJobStore, type VisitStore } from "../../src/store/index.ts";
import { loadBrowserStore } from "./browser-store.ts";

let pouch: Awaited<ReturnType<typeof loadBrowserStore>>;
let databases = 0;

beforeAll(async () => {
  pouch = await loadBrowserStore();
}, 60_000);

/** Each call gives another window's store of the same jobs. */
const KINDS: [name: string, make: () => () => VisitStore][] = [
  [
    "in memory",
    () => {
      const store = memoryJobStore();
      return () => store;
    },
  ],
  [
    "in the browser's database",
    () => {
      const name = `windows-${databases++}`;
      return () => pouch.pouchJobStore(name);
    },
  ],
];

/** `deaf` hears nothing of other windows, as while both type in the same moment. */
async function openWindow(store: VisitStore, { deaf = false } = {}) {
  const own = deaf ? { ...store, watch: () => () => {} } : store;
  const session = createSession("", newJob("New job", 24));
  const saving = keepSaved(session, own, {
    now: () => new Date().toISOString(),
    wait: () => new Promise(() => {}),
  });
  const job = await store.load("a");
  if (!job) throw new Error("no job a");
  session.open("a", job);
  const name = (title: string) =>
    session.edit("Rename", (draft) => {
      draft.title = title;
    });
  const power = (volts: number) =>
    session.edit("Set the voltage", (draft) => {
      draft.systemVoltage = volts;
    });
  return { session, saving, name, power, now: () => session.get().job };
}

describe.each(KINDS)("two windows on one job %s", (_name, make) => {
  async function twoWindows(options?: { deaf: boolean }) {
    const open = make();
    const first = open();
    await first.save("a", newJob("Pump", 24));
    const one = await openWindow(first, options);
    const other = await openWindow(open(), options);
    const titles = async () => (await first.list()).map((row) => row.title).sort();
    return { one, other, store: first, titles };
  }

  test("what one saves the other takes over, with a word and an empty history", async () => {
    const { one, other, titles } = await twoWindows();
    other.power(12);
    await other.saving.flush();
    await vi.waitFor(() => expect(one.now().systemVoltage).toBe(12));
    one.name("Lift");
    await one.saving.flush();
    await vi.waitFor(() => expect(other.now().title).toBe("Lift"));
    expect(other.now().systemVoltage).toBe(12);
    expect(other.session.get().history.done).toEqual([]);
    expect(other.session.get().notice?.text).toContain("Another window changed this job");
    expect(await titles()).toEqual(["Lift"]);
  });

  test("opening a job in another window changes nothing in the first", async () => {
    const { one, other } = await twoWindows();
    one.power(12);
    await one.saving.flush();
    await other.saving.flush();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(one.session.get().history.done).toHaveLength(1);
  });

  test("where both have edits of their own, both versions are kept and it is said so", async () => {
    const { one, other, store, titles } = await twoWindows({ deaf: true });
    one.power(12);
    await one.saving.flush();
    other.power(48);
    expect(await other.saving.flush()).toBe(true);
    expect(await titles()).toEqual(["Pump", "Pump (other window)"]);
    expect((await store.load("a"))?.systemVoltage).toBe(12);
    const { key, job, notice } = other.session.get();
    expect(key).not.toBe("a");
    expect(job).toMatchObject({ title: "Pump (other window)", systemVoltage: 48 });
    expect(notice?.text).toContain("“Pump (other window)”");
    // It goes on there, with its undo steps.
    other.session.undo();
    expect(await other.saving.flush()).toBe(true);
    expect((await store.load(key))?.systemVoltage).toBe(24);
    expect((await store.load("a"))?.systemVoltage).toBe(12);
  });

  test("both saving at the same moment loses neither", async () => {
    const { one, other, store } = await twoWindows();
    one.power(12);
    other.power(48);
    await Promise.all([one.saving.flush(), other.saving.flush()]);
    const rows = await store.list();
    const volts = await Promise.all(
      rows.map(async ({ key }) => (await store.load(key))?.systemVoltage),
    );
    expect(volts.toSorted()).toEqual([12, 48]);
    expect(new Set(rows.map((row) => row.title)).size).toBe(2);
  });

  test("the same change made in both is one job still", async () => {
    const { one, other, titles } = await twoWindows({ deaf: true });
    one.power(12);
    await one.saving.flush();
    other.power(12);
    await other.saving.flush();
    expect(await titles()).toEqual(["Pump"]);
    other.power(48);
    await other.saving.flush();
    expect(await titles()).toEqual(["Pump"]);
  });

  test("a job deleted in one window is kept when the other one goes on with it", async () => {
    const { other, store, titles } = await twoWindows({ deaf: true });
    await store.remove("a");
    other.name("Still wanted");
    expect(await other.saving.flush()).toBe(true);
    expect(await titles()).toEqual(["Still wanted"]);
    expect(other.session.get().notice?.text).toContain("deleted in another window");
  });

  test("a save over a version that is not there any more is refused and writes nothing", async () => {
    const { store } = await twoWindows();
    const read = await store.load("a");
    if (!read) throw new Error("no job");
    await store.save("a", newJob("Newer", 24));
    await expect(store.save("a", newJob("Stale", 24), read)).rejects.toThrow(/another window/);
    expect((await store.load("a"))?.title).toBe("Newer");
    expect((await store.list()).map((row) => row.title)).toEqual(["Newer"]);
  });
});
