import { expect, test } from "vitest";
import { createPageDesk, createSession, type TracePort } from "../../../src/session/index.ts";
import { drawing, edit } from "../diagram/drawing.ts";
import { pictured, settled } from "./fake-trace.ts";

/** A desk whose far side answers when the test lets it, and breaks off as a worker does. */
function desk(found = true) {
  const session = createSession("job", pictured(drawing([])));
  const opened: number[] = [];
  const closed: number[] = [];
  const breakOff: (() => void)[] = [];
  const port = {
    open: async () => {
      opened.push(1);
      return { width: 800, height: 600, lineWidth: 3 };
    },
    callOff: () => {
      for (const off of breakOff.splice(0)) off();
    },
    close: () => {
      closed.push(1);
    },
  } as unknown as TracePort;
  const pages = createPageDesk(
    session,
    () => port,
    async () => (found ? { bytes: new Uint8Array(), type: "image/png" } : null),
  );
  /** Work that ends with `answer` once `go` is called, or with being broken off. */
  const held = <T>(answer: T) => {
    let go = () => {};
    const work = () =>
      new Promise<T>((resolve, reject) => {
        go = () => resolve(answer);
        breakOff.push(() => reject(Object.assign(new Error("off"), { name: "CalledOff" })));
      });
    return { work, go: () => go() };
  };
  return { session, pages, opened, closed, held };
}

test("the picture is made ready once, and work is shown while it is under way", async () => {
  const { pages, opened, held } = desk();
  const first = held("one");
  const answer = pages.run("Looking", first.work);
  await settled();
  expect(pages.get()).toMatchObject({ file: "images/page.png", work: { what: "Looking" } });
  first.go();
  expect(await answer).toBe("one");
  expect(pages.get().work).toBeNull();
  expect(
    await pages.run("Again", async (_, tell) => {
      tell(0.5);
      return pages.get().work?.share;
    }),
  ).toBe(0.5);
  expect(opened).toHaveLength(1);
});

test("work that nobody waits for is not shown, and gives way to any other", async () => {
  const { pages, held } = desk();
  await pages.run("Open", async () => {});
  const quiet = held("quiet");
  const unseen = pages.runQuietly(quiet.work);
  await settled();
  expect(pages.get().work).toBeNull();
  const loud = pages.run("Looking", async () => "loud");
  expect(await unseen).toBeNull();
  expect(await loud).toBe("loud");
  expect(pages.get().problem).toBeNull();

  const [older, newer] = [held("older"), held("newer")];
  const first = pages.runQuietly(older.work);
  const second = pages.runQuietly(newer.work);
  await settled();
  newer.go();
  expect(await first).toBeNull();
  expect(await second).toBe("newer");
});

test("a small question is answered beside what is under way, once the picture is ready", async () => {
  const { pages, held } = desk();
  expect(await pages.peek(async () => "early")).toBeNull();
  const long = held("long");
  const answer = pages.run("Looking", long.work);
  await settled();
  expect(await pages.peek(async () => "beside")).toBe("beside");
  expect(
    await pages.peek(async () => {
      throw new Error("off");
    }),
  ).toBeNull();
  long.go();
  expect(await answer).toBe("long");
});

test("stopped work, and work on a picture that is another by now, gives no answer and no complaint", async () => {
  const { pages, session, held } = desk();
  const stopped = pages.run("Looking", held("stopped").work);
  const waiting = pages.run("Waiting", async () => "waiting");
  await settled();
  pages.callOff();
  expect([await stopped, await waiting]).toEqual([null, null]);

  const late = held("late");
  const answer = pages.run("Looking", late.work);
  await settled();
  session.edit("Another picture", (draft) => {
    const image = draft.diagram.sheets[0]?.image;
    if (image) image.file = "images/other.png";
  });
  late.go();
  expect(await answer).toBeNull();
  expect(pages.get()).toMatchObject({ work: null, problem: null });
});

test("a thread that broke is let go, and the next work gets another", async () => {
  const { pages, opened } = desk();
  await pages.run("Looking", async () => {
    throw Object.assign(new Error("out of memory"), { name: "BrokenThread" });
  });
  expect(pages.get()).toMatchObject({ page: null, work: null, problem: "out of memory" });
  expect(await pages.run("Looking", async () => "well")).toBe("well");
  expect(opened).toHaveLength(2);
});

test("the thread is let go when the picture is shown nowhere, and not while it is on another sheet", async () => {
  const { pages, session, opened, closed, held } = desk();
  await pages.run("Looking", async () => {});
  session.edit("Another sheet", (draft) => {
    const [first] = draft.diagram.sheets;
    if (first) draft.diagram.sheets.push({ ...first, id: "S9", image: undefined });
  });
  session.show({ sheet: "S9" });
  await settled();
  expect(closed).toHaveLength(0);
  expect(pages.get().file).toBe("images/page.png");

  session.show({ sheet: session.get().job.diagram.sheets[0]?.id ?? null });
  const long = held("long");
  const answer = pages.run("Looking", long.work);
  await settled();
  session.edit("No picture", (draft) => {
    const [first] = draft.diagram.sheets;
    if (first) first.image = undefined;
  });
  expect(await answer).toBeNull();
  await settled();
  expect(closed).toHaveLength(1);
  expect(pages.get()).toMatchObject({ file: null, page: null, work: null, problem: null });

  session.undo();
  expect(await pages.run("Looking", async () => "again")).toBe("again");
  expect(opened).toHaveLength(2);
});

test("another job's picture of the same name is another picture", async () => {
  const { pages, session, opened, closed } = desk();
  await pages.run("Looking", async () => {});
  session.open("other", pictured(drawing([])));
  await settled();
  expect(closed).toHaveLength(1);
  expect(await pages.run("Looking", async () => "other")).toBe("other");
  expect(opened).toHaveLength(2);
});

test("what goes wrong is told in a sentence and can be put away", async () => {
  const { pages } = desk();
  await pages.run("Looking", async () => {
    throw new Error("The picture can't be read.");
  });
  expect(pages.get().problem).toBe("The picture can't be read.");
  pages.forgetProblem();
  expect(pages.get().problem).toBeNull();
  const missing = desk(false);
  await missing.pages.run("Looking", async () => {});
  expect(missing.pages.get().problem).toMatch(/not with the job/);
  const bare = createSession(
    "bare",
    edit(drawing([]), () => {}),
  );
  const without = createPageDesk(
    bare,
    () => ({}) as TracePort,
    async () => null,
  );
  expect(await without.run("Looking", async () => "no")).toBeNull();
});

test("what went wrong is said for as long as its own picture is shown", async () => {
  const { pages, session } = desk();
  const fail = () =>
    pages.run("Looking", async () => {
      throw new Error("Far too many lines.");
    });
  await fail();
  session.edit("Another title", (draft) => {
    draft.title = "another";
  });
  expect(pages.get().problem).toBe("Far too many lines.");
  session.edit("Another picture", (draft) => {
    const image = draft.diagram.sheets[0]?.image;
    if (image) image.file = "images/other.png";
  });
  expect(pages.get().problem).toBeNull();

  await fail();
  expect(pages.get().problem).toBe("Far too many lines.");
  session.show({ sheet: null });
  expect(pages.get().problem).toBeNull();
});
