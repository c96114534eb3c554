import { expect, test } from "vitest";
import { idsOf } from "../../../src/job/index.ts";
import { clipOf, pasteClip } from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const job = drawing(
  [
    { id: "F1", kind: "fuse", at: [0, 0] },
    { id: "F2", kind: "fuse", at: [400, 0] },
    { id: "F3", kind: "fuse", at: [800, 0] },
  ],
  [
    { id: "W1", from: "F1:2", to: "F2:1", path: [[200, 10]], number: "7" },
    { id: "W2", from: "F2:2", to: "F3:1" },
  ],
);

test("a clip takes the wires between the chosen parts and no others", () => {
  expect(clipOf(job, ["F1", "F2", "W2"])?.wires.map((wire) => wire.id)).toEqual(["W1"]);
});

test("wires alone make no clip", () => {
  expect(clipOf(job, ["W1"])).toBeNull();
});

test("pasting twice gives fresh ids each time and leaves what was there", () => {
  const clip = clipOf(job, ["F1", "F2"]);
  if (!clip) throw new Error("no clip");
  let made: string[] = [];
  const once = edit(job, (draft) => {
    made = pasteClip(draft, clip, "s1", [50, 60]);
  });
  const twice = edit(once, (draft) => {
    pasteClip(draft, clip, "s1", [100, 120]);
  });
  expect(made).toEqual(["F4", "F5", "W3"]);
  expect(found(once.diagram.wires, "W3")).toMatchObject({
    from: "F4:2",
    to: "F5:1",
    number: "7",
    path: [[250, 70]],
  });
  expect(found(once.diagram.parts, "F4").at).toEqual([50, 60]);
  const things = twice.diagram.parts.length + twice.diagram.wires.length;
  expect(idsOf(twice).size).toBe(things + 2);
  expect(twice.diagram.parts.slice(0, 3)).toEqual(job.diagram.parts);
});
