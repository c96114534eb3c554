import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import type { Job, Wire } from "../../../src/job/index.ts";
import { alignParts, moveThings, sceneOf, setUnit, turnParts } from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const chain = (path?: [number, number][]) => {
  const wire: Wire = { id: "W1", from: "F1:2", to: "F2:1" };
  if (path) wire.path = path;
  return drawing(
    [
      { id: "F1", kind: "fuse", at: [0, 0] },
      { id: "F2", kind: "fuse", at: [400, 0] },
      { id: "F3", kind: "fuse", at: [400, 300] },
    ],
    [
      wire,
      {
        id: "W2",
        from: "F2:2",
        to: "F3:2",
        path: [
          [600, 0],
          [600, 300],
        ],
      },
    ],
  );
};

const runOf = (job: Job, id: string): readonly Point[] => {
  const shape = sceneOf(job.diagram, "s1").wireById.get(id);
  if (!shape) throw new Error(`no wire ${id}`);
  return shape.points;
};

const square = (run: readonly Point[]) =>
  run.slice(1).every((b, i) => {
    const a = run[i] as Point;
    return Math.abs(a[0] - b[0]) < 1e-6 || Math.abs(a[1] - b[1]) < 1e-6;
  });

const step = fc.integer({ min: -80, max: 80 });

test("moving and moving back is the document as it was", () => {
  fc.assert(
    fc.property(
      step,
      step,
      fc.subarray(["F1", "F2", "F3", "W1", "W2"], { minLength: 1 }),
      fc.constantFrom<[number, number][] | undefined>(undefined, [
        [150, 0],
        [150, 70],
        [250, 70],
        [250, 0],
      ]),
      (dx, dy, ids, path) => {
        // an end that comes to lie level with a run of its wire makes one straight run of the two
        fc.pre(path === undefined || Math.abs(dy) !== 70);
        const job = chain(path);
        const there = edit(job, (draft) => moveThings(draft, ids, [dx, dy]));
        const back = edit(there, (draft) => moveThings(draft, ids, [-dx, -dy]));
        expect(back).toEqual(job);
      },
    ),
  );
});

test("wires at right angles stay at right angles and stay on their pins", () => {
  fc.assert(
    fc.property(step, step, fc.subarray(["F1", "F2", "F3"], { minLength: 1 }), (dx, dy, ids) => {
      const job = edit(chain(), (draft) => moveThings(draft, ids, [dx, dy]));
      const scene = sceneOf(job.diagram, "s1");
      for (const { wire, points } of scene.wires) {
        expect(square(points)).toBe(true);
        expect(points[0]).toEqual(scene.pins.get(wire.from)?.at);
        expect(points.at(-1)).toEqual(scene.pins.get(wire.to)?.at);
      }
    }),
  );
});

test("a straight wire whose end leaves the line gets a step in its middle", () => {
  const job = edit(chain(), (draft) => moveThings(draft, ["F2"], [0, 40]));
  const run = runOf(job, "W1");
  expect(run).toHaveLength(4);
  expect(run[1]?.[1]).toBe(0);
  expect(run[2]?.[1]).toBe(40);
});

test("corners of a wire wholly between moved parts go along", () => {
  const job = edit(chain(), (draft) => moveThings(draft, ["F2", "F3"], [10, 20]));
  expect(found(job.diagram.wires, "W2").path).toEqual([
    [610, 20],
    [610, 320],
  ]);
});

test("a wire at a free angle follows without new corners", () => {
  const before = edit(chain(), (draft) => moveThings(draft, ["F2"], [0, 40]));
  const free = edit(before, (draft) => {
    delete found(draft.diagram.wires, "W1").path;
  });
  const job = edit(free, (draft) => moveThings(draft, ["F2"], [0, 40]));
  expect(found(job.diagram.wires, "W1").path).toBeUndefined();
});

test("four quarter turns are none", () => {
  const job = chain();
  let now = job;
  for (let i = 0; i < 4; i++) now = edit(now, (draft) => turnParts(draft, ["F2", "F3"], 90));
  expect(now.diagram.parts).toEqual(job.diagram.parts);
});

test("wires stay on the pins of a part that is turned or drawn at another size", () => {
  const job = edit(chain(), (draft) => {
    turnParts(draft, ["F2"], 90);
    setUnit(draft, "F2", 17);
  });
  const scene = sceneOf(job.diagram, "s1");
  for (const { wire, points } of scene.wires) {
    expect(points[0]).toEqual(scene.pins.get(wire.from)?.at);
    expect(points.at(-1)).toEqual(scene.pins.get(wire.to)?.at);
  }
});

test("parts line up with the first one chosen", () => {
  const job = edit(chain(), (draft) => alignParts(draft, ["F2", "F1", "F3"], "middle"));
  expect(job.diagram.parts.map((part) => part.at[0])).toEqual([400, 400, 400]);
});

test("one part alone lines up with the picture", () => {
  const job = edit(chain(), (draft) => {
    const sheet = found(draft.diagram.sheets, "s1");
    sheet.image = { file: "images/a.png", width: 1000, height: 600 };
    alignParts(draft, ["F1"], "middle");
  });
  expect(found(job.diagram.parts, "F1").at).toEqual([500, 0]);
});
