import { beforeAll, describe, expect, test } from "vitest";
import { renameImages } from "../../src/job/index.ts";
import { memoryJobStore, type UnreadableJob, type VisitStore } from "../../src/store/index.ts";
import { png } from "../job/pictures.ts";
import { looseJob, smallJob } from "../job/small-job.ts";
import { loadBrowserStore } from "./browser-store.ts";

type Open = () => VisitStore;

let pouch: Awaited<ReturnType<typeof loadBrowserStore>>;
let databases = 0;

beforeAll(async () => {
  pouch = await loadBrowserStore();
}, 60_000);

const picture = (width: number) => ({ bytes: png(width, 2), type: "image/png" });

/** A new, empty store; `open` again gives what a reload of the page would. */
const KINDS: [name: string, make: () => Open][] = [
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
      const name = `test-${databases++}`;
      return () => pouch.pouchJobStore(name);
    },
  ],
];

describe.each(KINDS)("a store %s", (_name, make) => {
  test("gives back the job that was saved, also after a reload", async () => {
    const open = make();
    const job = { ...smallJob(), "field of a newer version": { _id: 1, deep: [null] } };
    await open().save("a", job);
    expect(await open().load("a")).toEqual(job);
    expect(await open().load("b")).toBeNull();
  });

  test("keeps the latest of many saves that were never waited for", async () => {
    const open = make();
    const store = open();
    const saves = Array.from({ length: 30 }, (_, n) =>
      store.save("a", { ...smallJob(), title: `edit ${n}` }),
    );
    await Promise.all(saves);
    expect((await open().load("a"))?.title).toBe("edit 29");
    expect(await open().list()).toHaveLength(1);
  });

  test("lists jobs with the last saved first, and without the removed ones", async () => {
    const open = make();
    const store = open();
    for (const key of ["a", "b", "c", "a"]) {
      await store.save(key, { ...smallJob(), title: `job ${key}` });
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    const titles = async () => (await open().list()).map(({ title }) => title);
    expect(await titles()).toEqual(["job a", "job c", "job b"]);
    await store.remove("c");
    expect(await titles()).toEqual(["job a", "job b"]);
    expect(await open().load("c")).toBeNull();
    await store.save("c", smallJob());
    expect(await open().load("c")).toEqual(smallJob());
  });

  test("removing what is not there does nothing", async () => {
    const open = make();
    await open().remove("nothing");
    expect(await open().list()).toEqual([]);
  });

  test("keeps a picture once, by the hash of its bytes", async () => {
    const open = make();
    const store = open();
    const [file, again] = await Promise.all([
      store.putPicture(picture(3)),
      store.putPicture(picture(3)),
    ]);
    expect(file).toMatch(/^images\/[0-9a-f]{64}\.png$/);
    expect(again).toBe(file);
    const kept = await open().getPicture(file);
    expect(kept?.type).toBe("image/png");
    expect(Buffer.from(kept?.bytes ?? []).equals(Buffer.from(picture(3).bytes))).toBe(true);
    expect(await store.getPicture("images/scan.png")).toBeNull();
    expect(await store.getPicture(file.replace(/[0-9a-f]{8}/, "00000000"))).toBeNull();
  });

  test("a removed job takes its pictures along, but for those of other jobs", async () => {
    const open = make();
    const store = open();
    const [own, shared] = [await store.putPicture(picture(4)), await store.putPicture(picture(5))];
    const withPicture = (file: string) =>
      renameImages(smallJob(), new Map([["images/scan.png", file]]));
    const two = looseJob();
    two.diagram.sheets = [own, shared].map((file, n) => ({
      id: `sheet${n + 1}`,
      image: { file, width: 4, height: 2 },
    }));
    await store.save("two", two);
    await store.save("one", withPicture(shared));
    await store.remove("two");
    expect(await open().getPicture(own)).toBeNull();
    expect(await open().getPicture(shared)).not.toBeNull();
    expect(await store.putPicture(picture(4))).toBe(own);
    expect(await open().getPicture(own)).not.toBeNull();
  });

  test("remembers which job was open, and forgets it with the job", async () => {
    const open = make();
    const store = open();
    expect(await store.lastOpened()).toBeNull();
    await store.save("a", smallJob());
    await store.save("b", smallJob());
    await store.setLastOpened("a");
    await store.setLastOpened("b");
    expect(await open().lastOpened()).toBe("b");
    await store.remove("b");
    expect(await open().lastOpened()).toBeNull();
  });

  test("a job with loose threads opens without them", async () => {
    const open = make();
    const job = looseJob();
    job.plugs[0].cavities.splice(0, 1);
    await open().save("a", job);
    expect((await open().load("a"))?.links).toEqual([{ pin: "A1:2", cavity: "X1:2" }]);
  });

  test("a job that cannot be read is listed, told and not lost", async () => {
    const open = make();
    const job = { ...looseJob(), version: 99, title: "From tomorrow" };
    await open().save("a", job);
    expect((await open().list()).map(({ title }) => title)).toEqual(["From tomorrow"]);
    const error = await open()
      .load("a")
      .catch((thrown: unknown) => thrown);
    // The bundle under test has a class of its own.
    expect((error as Error).name).toBe("UnreadableJob");
    expect((error as UnreadableJob).issues[0]?.code).toBe("newer-version");
    expect(JSON.parse((error as UnreadableJob).text)).toEqual(job);
  });
});

test("two tabs that save one job at once both get through, and the job is one of theirs", async () => {
  const [left, right] = [pouch.pouchJobStore("tabs"), pouch.pouchJobStore("tabs")];
  await Promise.all(
    Array.from({ length: 10 }, (_, n) => [
      left.save("a", { ...smallJob(), title: `left ${n}` }),
      right.save("a", { ...smallJob(), title: `right ${n}` }),
    ]).flat(),
  );
  expect((await left.load("a"))?.title).toMatch(/^(left|right) 9$/);
  expect(await right.load("a")).toEqual(await left.load("a"));
});

test("saving on and on does not grow the database: old revisions go", async () => {
  const store = pouch.pouchJobStore("growth");
  const marker = "a-title-to-be-found-again";
  for (let n = 0; n < 20; n++) await store.save("a", { ...smallJob(), title: `${marker} ${n}` });
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open("_pouch_growth");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const records = await new Promise<unknown[]>((resolve, reject) => {
    const request = database.transaction("docs").objectStore("docs").getAll();
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const kept = JSON.stringify(records).split(marker).length - 1;
  expect(kept).toBeGreaterThan(0);
  expect(kept).toBeLessThanOrEqual(6);
});
