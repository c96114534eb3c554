import { expect, test } from "vitest";
import type { Job, Wire } from "../../../src/job/index.ts";
import { layNets, wholeNets } from "../../../src/session/index.ts";
import { drawing, edit, found } from "../diagram/drawing.ts";
import { pictureNet, wholeNet } from "./picture-net.ts";

/** F1 with pins at 30 and 90, F2 at 230 and 290, both at height 100; F3 below them; ground X1. */
const fuses = (wires: readonly Wire[] = []) =>
  drawing(
    [
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [260, 100] },
      { id: "F3", kind: "fuse", at: [260, 300] },
      { id: "X1", kind: "ground", at: [160, 300] },
    ],
    wires,
  );

const lay = (job: Job, ...nets: Parameters<typeof wholeNet>[]) =>
  edit(job, (draft) => {
    layNets(
      draft,
      "s1",
      nets.map((net) => wholeNet(...net)),
      [],
    );
  });

const added = (before: Job, after: Job) => ({
  wires: after.diagram.wires.filter((wire) => !before.diagram.wires.includes(wire)),
  parts: after.diagram.parts.filter((part) => !before.diagram.parts.includes(part)),
});

test("a net of two pins is one wire, its real corners made square and ending at the pins", () => {
  const before = fuses();
  const after = lay(before, [
    [
      [[92.4, 101.3], "F1:2"],
      [[228.1, 299.2], "F3:1"],
    ],
    [[0, 1, [160.2, 100.9], [159.6, 299.5]]],
  ]);
  expect(added(before, after)).toEqual({
    wires: [
      {
        id: "W1",
        from: "F1:2",
        to: "F3:1",
        path: [
          [160, 100],
          [160, 300],
        ],
      },
    ],
    parts: [],
  });
});

test("a straight line between two pins that are a little out of line stays one; far out, it gets a step", () => {
  const askew = drawing([
    { id: "F1", kind: "fuse", at: [60, 100] },
    { id: "F2", kind: "fuse", at: [260, 102] },
  ]);
  const straight = lay(askew, [
    [
      [[92, 100], "F1:2"],
      [[228, 101], "F2:1"],
    ],
    [[0, 1]],
  ]);
  expect(straight.diagram.wires[0]?.path).toBeUndefined();
  const apart = drawing([
    { id: "F1", kind: "fuse", at: [60, 100] },
    { id: "F2", kind: "fuse", at: [260, 112] },
  ]);
  const stepped = lay(apart, [
    [
      [[92, 104], "F1:2"],
      [[228, 105], "F2:1"],
    ],
    [[0, 1]],
  ]);
  expect(stepped.diagram.wires[0]?.path).toEqual([
    [160, 100],
    [160, 112],
  ]);
});

test("a joint becomes a splice at its dot, in line with the pins that it is level with", () => {
  const before = fuses();
  const after = lay(before, [
    [[[92, 101], "F1:2"], [[229, 101], "F2:1"], [[160.3, 101.2]], [[160.1, 298], "X1:1"]],
    [
      [0, 2],
      [2, 1],
      [2, 3],
    ],
  ]);
  const { wires, parts } = added(before, after);
  expect(parts).toMatchObject([{ kind: "splice", at: [160, 100], sheet: "s1" }]);
  const splice = `${parts[0]?.id}:1`;
  expect(wires.map(({ from, to, path }) => [from, to, path])).toEqual([
    ["F1:2", splice, undefined],
    [splice, "F2:1", undefined],
    [splice, "X1:1", undefined],
  ]);
});

test("a free end becomes an untraced end that points onward; a stroke sticking out of a word does not", () => {
  const net = wholeNet(
    [[[92, 101], "F1:2"], [[160, 100]], [[160, 20]], [[168, 100]]],
    [
      [0, 1],
      [1, 2],
      [1, 3],
    ],
  );
  const word = { left: 167, top: 92, right: 200, bottom: 104 };
  const before = fuses();
  const after = edit(before, (draft) => {
    layNets(draft, "s1", [net], [word]);
  });
  expect(added(before, after)).toMatchObject({
    wires: [{ from: "F1:2", to: "X2:1", path: [[160, 100]] }],
    parts: [{ id: "X2", kind: "offpage", at: [160, 20], turn: 270 }],
  });
  const bare = edit(before, (draft) => {
    layNets(draft, "s1", [net], []);
  });
  expect(
    added(before, bare)
      .parts.map(({ kind }) => kind)
      .sort(),
  ).toEqual(["offpage", "offpage", "splice"]);
});

test("what joins the pins already stays, and is not drawn twice", () => {
  const before = fuses([
    { id: "W1", from: "F1:2", to: "F2:1", number: "7", path: [[160, 40]] },
    { id: "W2", from: "F3:2", to: "X1:1" },
  ]);
  const after = lay(before, [
    [
      [[92, 101], "F1:2"],
      [[229, 100], "F2:1"],
    ],
    [[0, 1]],
  ]);
  expect(after).toEqual(before);
});

test("a branch that a drawn wire lacks begins on that wire, at the joint", () => {
  const before = fuses([{ id: "W1", from: "F1:2", to: "F2:1", number: "7" }]);
  const after = lay(before, [
    [[[92, 101], "F1:2"], [[229, 101], "F2:1"], [[160.3, 103]], [[160.1, 298], "X1:1"]],
    [
      [0, 2],
      [2, 1],
      [2, 3],
    ],
  ]);
  expect(found(after.diagram.wires, "W1")).toMatchObject({ from: "F1:2", to: "X2:1", number: "7" });
  expect(found(after.diagram.wires, "W2")).toMatchObject({ from: "X2:1", to: "F2:1", number: "7" });
  expect(found(after.diagram.wires, "W3")).toEqual({ id: "W3", from: "X2:1", to: "X1:1" });
  expect(found(after.diagram.parts, "X2")).toMatchObject({ kind: "splice", at: [160, 100] });
});

test("two branches from one drawn wire split it where each of them is, in order", () => {
  const before = drawing(
    [
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [660, 100] },
      { id: "X1", kind: "ground", at: [200, 300] },
      { id: "X2", kind: "ground", at: [400, 300] },
    ],
    [{ id: "W1", from: "F1:2", to: "F2:1" }],
  );
  const after = lay(before, [
    [
      [[92, 100], "F1:2"],
      [[629, 100], "F2:1"],
      [[200, 100]],
      [[400, 100]],
      [[200, 300], "X1:1"],
      [[400, 300], "X2:1"],
    ],
    [
      [0, 2],
      [2, 3],
      [3, 1],
      [2, 4],
      [3, 5],
    ],
  ]);
  const ends = after.diagram.wires.map(({ from, to }) => `${from} ${to}`).sort();
  const at = (x: number) =>
    `${after.diagram.parts.find((part) => part.kind === "splice" && part.at[0] === x)?.id}:1`;
  expect(ends).toEqual(
    [
      `F1:2 ${at(200)}`,
      `${at(200)} ${at(400)}`,
      `${at(400)} F2:1`,
      `${at(200)} X1:1`,
      `${at(400)} X2:1`,
    ].sort(),
  );
});

test("made twice, the second time draws nothing: a free end finds the untraced end that is there", () => {
  const net: Parameters<typeof wholeNet> = [
    [[[92, 101], "F1:2"], [[229, 101], "F2:1"], [[160, 101]], [[160, 20]]],
    [
      [0, 2],
      [2, 1],
      [2, 3],
    ],
  ];
  const once = lay(fuses(), net);
  expect(lay(once, net)).toEqual(once);
});

test("nets that come to one splice are one, and a pin of a part that is gone is no pin", () => {
  const nets = wholeNets([
    pictureNet(
      "N1",
      [
        [[92, 100], "F1:2"],
        [[156, 100], "SP:1"],
      ],
      [[0, 1]],
    ),
    pictureNet(
      "N2",
      [
        [[0, 0], "G9:1"],
        [[5, 5], "F3:1"],
      ],
      [[0, 1]],
    ),
    pictureNet(
      "N3",
      [
        [[164, 100], "SP:1"],
        [[229, 100], "F2:1"],
      ],
      [[0, 1]],
    ),
  ]);
  expect(nets.map(({ of }) => of)).toEqual([["N1", "N3"], ["N2"]]);
  const before = drawing([
    { id: "F1", kind: "fuse", at: [60, 100] },
    { id: "F2", kind: "fuse", at: [260, 100] },
    { id: "SP", kind: "splice", at: [160, 100] },
  ]);
  const after = edit(before, (draft) => {
    layNets(draft, "s1", nets, []);
  });
  const { wires, parts } = added(before, after);
  expect(wires).toMatchObject([
    { from: "F1:2", to: "SP:1" },
    { from: "SP:1", to: "F2:1" },
    { from: "X1:1", to: "X2:1" },
  ]);
  expect(parts.map(({ kind }) => kind)).toEqual(["offpage", "offpage"]);
});

test("two pins at one place of the picture are joined by a wire of their own", () => {
  const before = drawing([
    { id: "F1", kind: "fuse", at: [60, 100] },
    { id: "F2", kind: "fuse", at: [120, 100] },
  ]);
  const after = lay(before, [[[[90, 100], "F1:2", "F2:1"], [[90, 40]]], [[0, 1]]]);
  const ends = after.diagram.wires.map(({ from, to }) => [from, to]);
  expect(ends).toContainEqual(["F1:2", "F2:1"]);
  expect(ends).toHaveLength(2);
});

test("a ring is drawn once; a line of its own beside another is drawn, too", () => {
  const ring = lay(fuses(), [
    [
      [[92, 100], "F1:2"],
      [[229, 100], "F2:1"],
    ],
    [
      [0, 1],
      [0, 1, [110, 60], [210, 60]],
    ],
  ]);
  expect(ring.diagram.wires.map(({ from, to }) => [from, to])).toEqual([
    ["F1:2", "F2:1"],
    ["F1:2", "F2:1"],
  ]);
  const blot = lay(fuses(), [
    [[[92, 100], "F1:2"], [[229, 100], "F2:1"], [[160, 100]], [[166, 100]]],
    [
      [0, 2],
      [2, 3],
      [2, 3, [163, 103]],
      [3, 1],
    ],
  ]);
  expect(blot.diagram.wires).toHaveLength(1);
});

test("a splice that was placed at a joint and is not wired yet is the joint's", () => {
  const before = drawing([
    { id: "F1", kind: "fuse", at: [60, 100] },
    { id: "F2", kind: "fuse", at: [260, 100] },
    { id: "X1", kind: "ground", at: [160, 300] },
    { id: "SP", kind: "splice", at: [163, 102] },
  ]);
  const after = lay(before, [
    [[[92, 100], "F1:2"], [[229, 100], "F2:1"], [[160, 100]], [[160, 298], "X1:1"]],
    [
      [0, 2],
      [2, 1],
      [2, 3],
    ],
  ]);
  expect(added(before, after).parts).toEqual([]);
  expect(after.diagram.wires.map(({ from, to }) => `${from} ${to}`).sort()).toEqual([
    "F1:2 SP:1",
    "SP:1 F2:1",
    "SP:1 X1:1",
  ]);
});
