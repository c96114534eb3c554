/** What happens to a job while its picture is worked on must break nothing and write nothing astray. */
import { describe, expect, test } from "vitest";
import type { Job } from "../../../src/job/index.ts";
import type { SymbolProposal, TracedNet } from "../../../src/scan/index.ts";
import {
  addSheet,
  createPageDesk,
  createPartsDesk,
  createSession,
  createStore,
  createTraceDesk,
  removeSheet,
  type Session,
  type TracePort,
} from "../../../src/session/index.ts";
import { drawing } from "../diagram/drawing.ts";
import { settled } from "./fake-trace.ts";
import { pictureNet } from "./picture-net.ts";

const NET = pictureNet(
  "A",
  [
    [[92, 100], "F1:2"],
    [[228, 100], "F2:1"],
  ],
  [[0, 1]],
);

const FUSE: SymbolProposal = {
  kind: "fuse",
  box: { left: 380, top: 292, right: 420, bottom: 308 },
  at: [400, 300],
  turn: 0,
  unit: 10,
  confidence: 0.95,
  ends: [],
  others: [],
};

/** Desks over a sheet with two fuses whose picture came in by an edit; what is asked of it waits for `go`. */
function working() {
  const session = createSession("job", {
    ...drawing([
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [260, 100] },
    ]),
  });
  session.edit("Bring in a picture", (draft) => {
    const [sheet] = draft.diagram.sheets;
    if (sheet) sheet.image = { file: "images/page.png", width: 800, height: 600 };
  });
  const waiting: { go: () => void; off: () => void }[] = [];
  const held = <T>(answer: T) =>
    new Promise<T>((resolve, reject) => {
      const off = () => reject(Object.assign(new Error("off"), { name: "CalledOff" }));
      waiting.push({ go: () => resolve(answer), off });
    });
  const port: Partial<TracePort> = {
    open: async () => ({ width: 800, height: 600, lineWidth: 3 }),
    trace: () => held({ nets: [NET] as TracedNet[], questions: [], isTooRough: false }),
    findParts: () => held([FUSE]),
    netAt: async () => null,
    callOff: () => {
      for (const { off } of waiting.splice(0)) off();
    },
    close: () => {},
  };
  const pages = createPageDesk(
    session,
    () => port as TracePort,
    async () => ({ bytes: new Uint8Array(), type: "image/png" }),
  );
  const words = createStore([]);
  const lines = createTraceDesk(session, pages, { wait: async () => {}, words });
  const parts = createPartsDesk(session, pages);
  const go = async () => {
    for (const one of waiting.splice(0)) one.go();
    await settled();
  };
  return { session, pages, lines, parts, waiting, go };
}

const other = (): Job => drawing([{ id: "F9", kind: "fuse", at: [60, 100] }]);

/** What takes the picture that is worked on out of sight. */
const GOES: readonly (readonly [string, (session: Session) => void])[] = [
  [
    "its sheet is removed",
    (session) => session.edit("Remove", (draft) => removeSheet(draft, "s1")),
  ],
  ["its import is undone", (session) => session.undo()],
  ["another job is opened", (session) => session.open("other", other())],
  [
    "another sheet is shown",
    (session) => {
      session.edit("Add a sheet", (draft) => {
        addSheet(draft, { title: "Second" });
      });
      session.show({ sheet: session.get().job.diagram.sheets[1]?.id ?? null });
    },
  ],
];

describe.each(GOES)("while it is worked on, %s:", (_, disturb) => {
  test("the work is broken off, nothing of it is shown, and nothing is written", async () => {
    const { session, pages, lines, parts, waiting } = working();
    const traced = lines.traceAll();
    const found = parts.find();
    await settled();
    expect(waiting).toHaveLength(1);
    expect(pages.get().work?.what).toBe("Following lines");
    disturb(session);
    const after = session.get().job;
    await Promise.all([traced, found]);
    await settled();
    expect(pages.get()).toMatchObject({ work: null, problem: null });
    expect(lines.get()).toMatchObject({ traced: null, followed: null, isListOpen: false });
    expect(parts.get()).toMatchObject({ isOpen: false, found: null });
    expect(session.get().job).toBe(after);
    // What was proposed before can't be drawn there.
    expect(lines.draw([{ ...NET, of: ["A"] }], "Draw")).toBeNull();
    lines.leaveOut([100, 100]);
    parts.placeSure();
    expect(session.get().job.diagram.parts).toEqual(after.diagram.parts);
    expect(session.get().job.diagram.sheets.filter(({ answers }) => answers)).toEqual([]);
  });
});

test("a sheet that is only called otherwise is worked on to the end", async () => {
  const { session, lines, go } = working();
  const traced = lines.traceAll();
  await settled();
  session.edit("Rename", (draft) => {
    const [sheet] = draft.diagram.sheets;
    if (sheet) sheet.title = "Page 12";
  });
  await go();
  await traced;
  expect(lines.difference()?.proposals).toHaveLength(1);
  expect(lines.holds()).toBe(true);
});

test("undo and redo under open proposals and an open card leave both true to the drawing", async () => {
  const { session, lines, parts, go } = working();
  session.show({ scanDesk: true });
  const found = parts.find();
  await settled();
  await go();
  await found;
  parts.placeSure();
  expect(parts.items()).toEqual([]);
  const traced = lines.traceAll();
  await settled();
  await go();
  await traced;
  const [proposal] = lines.difference()?.proposals ?? [];
  expect(lines.draw(proposal ? [proposal.net] : [], "Accept a line")?.wires).toBe(1);
  for (const [turn, left, proposed] of [
    [session.undo, 0, 1],
    [session.undo, 1, 1],
    [session.redo, 0, 1],
    [session.redo, 0, 0],
  ] as const) {
    turn();
    await settled();
    await go();
    expect(parts.items()).toHaveLength(left);
    expect(lines.difference()?.proposals).toHaveLength(proposed);
  }
  // Back to before the picture came in, and on again.
  for (let n = 0; n < 3; n++) session.undo();
  expect([lines.get().traced, parts.get().found, lines.difference()]).toEqual([null, null, null]);
  for (let n = 0; n < 3; n++) session.redo();
  expect(session.get().job.diagram.wires).toHaveLength(1);
});
