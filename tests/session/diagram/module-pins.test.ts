import { expect, test } from "vitest";
import type { PartOf } from "../../../src/job/index.ts";
import {
  addModulePin,
  moveModulePin,
  nextMark,
  removeModulePin,
  resizeModule,
  sceneOf,
} from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const job = drawing(
  [
    {
      id: "A1",
      kind: "module",
      at: [500, 500],
      size: [300, 200],
      pins: [{ id: "1" }, { id: "2" }],
      power: { supply: ["1"], ground: ["2"] },
    },
    { id: "X1", kind: "ground", at: [500, 800] },
  ],
  [{ id: "W1", from: "A1:2", to: "X1:1" }],
);
const module = (now: typeof job) => found(now.diagram.parts, "A1") as PartOf<"module">;
const pinAt = (now: typeof job, pin: string) =>
  sceneOf(now.diagram, "s1").pins.get(`A1:${pin}`)?.at;

test("marks go on as moulded: numbers up, letters without I, O and Q", () => {
  expect(nextMark([])).toBe("1");
  expect(nextMark(["1", "2"])).toBe("3");
  expect(nextMark(["A", "H"])).toBe("J");
  expect(nextMark(["10", "2"])).toBe("3");
  expect(nextMark(["x", "2", "1"])).toBe("3");
});

test("a pin added at a place lies on the edge there and shifts no other", () => {
  const before = pinAt(job, "1");
  const after = edit(job, (draft) => {
    addModulePin(draft, "A1", [640, 430], "OUT");
  });
  expect(pinAt(after, "3")).toEqual([650, 430]);
  expect(pinAt(after, "1")).toEqual(before);
  expect(module(after).pins[2]?.printed).toBe("OUT");
});

test("a pin slides along the edge and its wire follows", () => {
  const after = edit(job, (draft) => moveModulePin(draft, "A1", "2", [560, 610]));
  expect(pinAt(after, "2")).toEqual([560, 600]);
  const shape = sceneOf(after.diagram, "s1").wireById.get("W1");
  expect(shape?.points[0]).toEqual([560, 600]);
});

test("a pin of a turned module is put on the edge that is seen there", () => {
  const turned = edit(job, (draft) => {
    module(draft).turn = 90;
  });
  const after = edit(turned, (draft) => {
    addModulePin(draft, "A1", [520, 655]);
  });
  expect(pinAt(after, "3")).toEqual([520, 650]);
});

test("taking a pin out takes its wire, its links and its words in `power` along", () => {
  const after = edit(job, (draft) => {
    draft.links.push({ pin: "A1:2", cavity: "P1:2" });
    removeModulePin(draft, "A1", "2");
  });
  expect(after.diagram.wires).toEqual([]);
  expect(after.links).toEqual([]);
  expect(module(after).power).toEqual({ supply: ["1"], ground: [] });
  expect(module(after).pins.map((pin) => pin.id)).toEqual(["1"]);
});

test("resizing the box keeps pins on its edge", () => {
  const placed = edit(job, (draft) => {
    addModulePin(draft, "A1", [640, 450]);
  });
  const after = edit(placed, (draft) => resizeModule(draft, "A1", [600, 400], [650, 600]));
  expect(pinAt(after, "3")).toEqual([950, 500]);
  const shape = sceneOf(after.diagram, "s1").partById.get("A1");
  expect(shape?.box).toEqual({ left: 350, top: 400, right: 950, bottom: 800 });
});
