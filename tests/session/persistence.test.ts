import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Job, newJob } from "../../src/job/index.ts";
import { createSession, keepSaved } from "../../src/session/index.ts";
import { memoryJobStore, type VisitStore } from "../../src/store/index.ts";

/** Time that passes only when told to. */
function handClock() {
  let now = 0;
  const sleepers: { at: number; wake: () => void }[] = [];
  return {
    now: () => new Date(now).toISOString(),
    wait: (ms: number) =>
      new Promise<void>((wake) => {
        sleepers.push({ at: now + ms, wake });
      }),
    async pass(ms: number) {
      now += ms;
      for (const sleeper of sleepers.splice(0)) {
        if (sleeper.at <= now) sleeper.wake();
        else sleepers.push(sleeper);
      }
      await settled();
    },
  };
}

/** Lets everything that can happen now happen. */
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

/** A store whose saves fail while `broken`, are counted, and never overlap unnoticed. */
function watchedStore() {
  const store = memoryJobStore();
  const watched = {
    ...store,
    broken: false,
    saves: [] as string[],
    running: 0,
    overlapped: false,
    async save(key: string, job: Job) {
      watched.saves.push(`${key}: ${job.title}`);
      watched.running++;
      watched.overlapped ||= watched.running > 1;
      await Promise.resolve();
      watched.running--;
      if (watched.broken) throw new Error("the disk is full");
      await store.save(key, job);
    },
  };
  return watched;
}

function setUp(store: VisitStore) {
  const clock = handClock();
  const session = createSession("a", newJob("first", 24));
  const saving = keepSaved(session, store, clock);
  const name = (title: string) =>
    session.edit("Rename", (job) => {
      job.title = title;
    });
  return { clock, session, saving, name };
}

describe("saving", () => {
  test("follows every edit at once, undo and redo too", async () => {
    const store = watchedStore();
    const { session, saving, name } = setUp(store);
    name("second");
    await settled();
    expect((await store.load("a"))?.title).toBe("second");
    session.undo();
    await settled();
    expect((await store.load("a"))?.title).toBe("first");
    session.redo();
    await settled();
    expect((await store.load("a"))?.title).toBe("second");
    expect(saving.status.get()).toEqual({ state: "saved", at: "1970-01-01T00:00:00.000Z" });
  });

  test("makes one save of the edits of one turn, and none of a mere look round", async () => {
    const store = watchedStore();
    const { session, name } = setUp(store);
    session.show({ selection: ["F1"] });
    await settled();
    expect(store.saves).toEqual([]);
    for (const title of ["x", "xy", "xyz"]) name(title);
    await settled();
    expect(store.saves).toEqual(["a: xyz"]);
  });

  test("an edit during a save is saved next, and saves never overlap", async () => {
    const store = watchedStore();
    const { name } = setUp(store);
    for (let n = 0; n < 20; n++) {
      name(`edit ${n}`);
      await Promise.resolve();
    }
    await settled();
    expect((await store.load("a"))?.title).toBe("edit 19");
    expect(store.overlapped).toBe(false);
    expect(store.saves.length).toBeLessThanOrEqual(20);
  });

  test("whatever the turns between edits, the last edit is what is stored", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(6), { minLength: 1, maxLength: 12 }), async (turns) => {
        const store = watchedStore();
        const { saving, name } = setUp(store);
        for (const [n, count] of turns.entries()) {
          name(`edit ${n}`);
          for (let turn = 0; turn < count; turn++) await Promise.resolve();
        }
        expect(await saving.flush()).toBe(true);
        expect((await store.load("a"))?.title).toBe(`edit ${turns.length - 1}`);
        expect(store.overlapped).toBe(false);
      }),
    );
  });

  test("another job that is opened is saved, and the last edit of the one before it too", async () => {
    const store = watchedStore();
    const { session, name } = setUp(store);
    name("last words");
    session.open("b", newJob("other", 12));
    await settled();
    expect((await store.load("a"))?.title).toBe("last words");
    expect((await store.load("b"))?.title).toBe("other");
  });

  test("stops when told to, after what is waiting", async () => {
    const store = watchedStore();
    const { saving, name } = setUp(store);
    name("kept");
    saving.stop();
    name("not kept");
    await settled();
    expect((await store.load("a"))?.title).toBe("kept");
  });
});

describe("a save that fails", () => {
  test("is told, keeps the open job, and is tried again after a pause", async () => {
    const store = watchedStore();
    const { clock, session, saving, name } = setUp(store);
    store.broken = true;
    name("precious");
    await settled();
    expect(saving.status.get()).toMatchObject({ state: "failed", at: null });
    expect(saving.status.get().why).toContain("the disk is full");
    expect(session.get().job.title).toBe("precious");
    await clock.pass(500);
    expect(store.saves).toHaveLength(2);
    store.broken = false;
    await clock.pass(1_000);
    expect(saving.status.get().state).toBe("saved");
    expect((await store.load("a"))?.title).toBe("precious");
    await clock.pass(60_000);
    expect(store.saves).toHaveLength(3);
  });

  test("is tried again at the next edit, with the newest job", async () => {
    const store = watchedStore();
    const { clock, saving, name } = setUp(store);
    store.broken = true;
    name("one");
    await settled();
    store.broken = false;
    name("two");
    await settled();
    expect(store.saves).toEqual(["a: one", "a: two"]);
    expect(saving.status.get().state).toBe("saved");
    await clock.pass(60_000);
    expect(store.saves).toHaveLength(2);
  });

  test("of one job does not keep another from being saved", async () => {
    const store = watchedStore();
    const { session, saving, name } = setUp({
      ...store,
      save: (key, job) => (key === "a" ? Promise.reject(new Error("no")) : store.save(key, job)),
    });
    name("stuck");
    session.open("b", newJob("other", 12));
    await settled();
    expect((await store.load("b"))?.title).toBe("other");
    expect(await saving.flush()).toBe(false);
  });

  test("flush tells whether all is saved", async () => {
    const store = watchedStore();
    const { saving, name } = setUp(store);
    expect(await saving.flush()).toBe(true);
    name("x");
    expect(await saving.flush()).toBe(true);
    store.broken = true;
    name("y");
    expect(await saving.flush()).toBe(false);
    store.broken = false;
    expect(await saving.flush()).toBe(true);
    expect((await store.load("a"))?.title).toBe("y");
  });
});
