import { expect, test } from "vitest";
import { newJob } from "../../../src/job/index.ts";
import {
  addSheet,
  createSession,
  justImported,
  NOT_BEGUN,
  noteImported,
  offerSquaring,
  scanProgress,
  scanStepOf,
  settleImported,
  watchScanProgress,
} from "../../../src/session/index.ts";
import { drawing, edit } from "../diagram/drawing.ts";
import { pictured } from "./fake-trace.ts";

const OFFERED = { ...NOT_BEGUN, isSquaringOffered: true };
const READ = { ...NOT_BEGUN, areWordsRead: true };
const two = () =>
  pictured(
    drawing([
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [260, 100] },
    ]),
  );

test("a picture is squared up, its parts found, its words read, its lines traced, in that order", () => {
  const bare = pictured(drawing([]));
  const sheet = bare.diagram.sheets[0]?.id ?? "";
  expect(scanStepOf(drawing([]), sheet, NOT_BEGUN)).toBeNull();
  expect(scanStepOf(bare, sheet, OFFERED)).toBe("square");
  expect(scanStepOf(bare, sheet, NOT_BEGUN)).toBe("parts");
  const placed = two();
  expect(scanStepOf(placed, sheet, OFFERED)).toBe("square");
  expect(scanStepOf(placed, sheet, NOT_BEGUN)).toBe("words");
  expect(scanStepOf(placed, sheet, READ)).toBe("trace");
  expect(scanStepOf(placed, sheet, { ...READ, areWordsLeft: true })).toBe("words");
  const named = edit(placed, (draft) => {
    const [part] = draft.diagram.parts;
    if (part) part.label = "Pump";
  });
  expect(scanStepOf(named, sheet, NOT_BEGUN)).toBe("trace");
  const wired = edit(named, (draft) => {
    draft.diagram.wires.push({ id: "W1", from: "F1:2", to: "F2:1", path: [] });
  });
  expect(scanStepOf(wired, sheet, NOT_BEGUN)).toBeNull();
});

test("of splices and page ends alone the parts are still to be found, wired or not", () => {
  const joints = pictured(
    drawing([
      { id: "SP1", kind: "splice", at: [60, 100] },
      { id: "E1", kind: "offpage", at: [260, 100] },
    ]),
  );
  expect(scanStepOf(joints, null, NOT_BEGUN)).toBe("parts");
  const followed = edit(joints, (draft) => {
    draft.diagram.wires.push({ id: "W1", from: "SP1:1", to: "E1:1", path: [] });
  });
  expect(scanStepOf(followed, null, NOT_BEGUN)).toBe("parts");
});

test("each sheet is at its own step", () => {
  let other = "";
  const job = edit(two(), (draft) => {
    draft.diagram.wires.push({ id: "W1", from: "F1:2", to: "F2:1", path: [] });
    other = addSheet(draft, { image: { file: "images/two.png", width: 80, height: 60 } });
  });
  expect(scanStepOf(job, job.diagram.sheets[0]?.id ?? "", NOT_BEGUN)).toBeNull();
  expect(scanStepOf(job, other, NOT_BEGUN)).toBe("parts");
  expect(scanStepOf(job, null, NOT_BEGUN)).toBeNull();
});

test("squaring up is next while the screen asks for it, and never of a sheet of another job", () => {
  const session = createSession("job", pictured(drawing([])));
  const sheet = session.get().job.diagram.sheets[0]?.id ?? "";
  session.show({ sheet });
  let told = 0;
  const stop = watchScanProgress(session, () => told++);
  noteImported(session, sheet);
  expect(scanProgress(session).isSquaringOffered).toBe(false);
  offerSquaring(session, sheet);
  offerSquaring(session, sheet);
  expect(told).toBeGreaterThan(1);
  expect(justImported(session).get().offered).toEqual([sheet]);
  expect(scanProgress(session).isSquaringOffered).toBe(true);
  settleImported(session, sheet);
  expect(scanProgress(session).isSquaringOffered).toBe(false);

  noteImported(session, sheet);
  offerSquaring(session, sheet);
  session.open("other", newJob("Other", 24));
  expect(justImported(session).get()).toEqual({ sheets: [], offered: [] });
  stop();
  told = 0;
  offerSquaring(session, sheet);
  expect(told).toBe(0);
});

test("as long as a pin of a module has no word the drawing does not say that its words are read", () => {
  const withModule = (words: readonly (string | undefined)[]) =>
    edit(two(), (draft) => {
      const [fuse] = draft.diagram.parts;
      if (fuse) fuse.label = "Pump";
      draft.diagram.parts.push({
        kind: "module",
        id: "A1",
        sheet: draft.diagram.sheets[0]?.id ?? "",
        at: [160, 200],
        turn: 0,
        size: [80, 40],
        pins: words.map((printed, n) => ({
          id: String(n + 1),
          at: [-40, n] as [number, number],
          ...(printed === undefined ? {} : { printed }),
        })),
      });
    });
  expect(scanStepOf(withModule(["IGN", undefined]), null, NOT_BEGUN)).toBe("words");
  expect(scanStepOf(withModule(["IGN", "OUT"]), null, NOT_BEGUN)).toBe("trace");
  // Read in this sitting and gone through: the print has no more.
  expect(scanStepOf(withModule(["IGN", undefined]), null, READ)).toBe("trace");
});

test("whether to square up is asked again of a picture that was opened with nothing done to it", () => {
  const session = createSession("job", newJob("Job", 24));
  expect(justImported(session).get().sheets).toEqual([]);
  const bare = pictured(drawing([]));
  session.open("bare", bare);
  expect(justImported(session).get().sheets).toEqual(bare.diagram.sheets.map(({ id }) => id));
  session.open("placed", two());
  expect(justImported(session).get().sheets).toEqual([]);
  const squared = edit(bare, (draft) => {
    const [sheet] = draft.diagram.sheets;
    if (sheet) sheet.original = { file: "images/before.png", width: 90, height: 70 };
  });
  session.open("squared", squared);
  expect(justImported(session).get().sheets).toEqual([]);
});
