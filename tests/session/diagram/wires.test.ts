import { expect, test } from "vitest";
import { layWire, moveWireEnd, removeThings, splitWire } from "../../../src/session/index.ts";
import { drawing, edit, found } from "./drawing.ts";

const twoFuses = () =>
  drawing(
    [
      { id: "F1", kind: "fuse", at: [0, 0] },
      { id: "F2", kind: "fuse", at: [400, 0] },
      { id: "X1", kind: "ground", at: [200, 200] },
    ],
    [
      {
        id: "W1",
        from: "F1:2",
        to: "F2:1",
        number: "412",
        colour: { base: "RD", tracer: "WH" },
        mm2: 1.5,
        metres: 4,
      },
    ],
  );

test("splitting a wire gives both halves its words and shares its length", () => {
  const job = edit(twoFuses(), (draft) => {
    splitWire(draft, "W1", [200, 3]);
  });
  const splice = found(job.diagram.parts, "X2");
  expect(splice.kind).toBe("splice");
  expect(splice.at).toEqual([200, 0]);
  const [one, two] = job.diagram.wires;
  expect([one?.from, one?.to, two?.from, two?.to]).toEqual(["F1:2", "X2:1", "X2:1", "F2:1"]);
  expect([one?.number, two?.number, two?.colour, two?.mm2]).toEqual([
    "412",
    "412",
    { base: "RD", tracer: "WH" },
    1.5,
  ]);
  expect((one?.metres ?? 0) + (two?.metres ?? 0)).toBeCloseTo(4);
});

test("splitting shares out the corners on either side", () => {
  const bent = edit(twoFuses(), (draft) => {
    found(draft.diagram.wires, "W1").path = [
      [100, 0],
      [100, 50],
      [300, 50],
      [300, 0],
    ];
  });
  const job = edit(bent, (draft) => {
    splitWire(draft, "W1", [200, 50]);
  });
  expect(job.diagram.wires.map((wire) => wire.path)).toEqual([
    [
      [100, 0],
      [100, 50],
    ],
    [
      [300, 50],
      [300, 0],
    ],
  ]);
});

test("a wire laid onto a wire makes a splice in the same edit", () => {
  const job = edit(twoFuses(), (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "X1:1" },
      to: { on: "wire", wire: "W1", at: [200, 0] },
      corners: [],
    });
  });
  expect(
    job.diagram.wires.filter((wire) => wire.from === "X2:1" || wire.to === "X2:1"),
  ).toHaveLength(3);
});

test("both ends on the same wire make two splices on its two halves", () => {
  const job = edit(twoFuses(), (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "wire", wire: "W1", at: [150, 0] },
      to: { on: "wire", wire: "W1", at: [250, 0] },
      corners: [
        [150, 80],
        [250, 80],
      ],
    });
  });
  const splices = job.diagram.parts.filter((part) => part.kind === "splice");
  expect(splices.map((part) => part.at)).toEqual([
    [150, 0],
    [250, 0],
  ]);
  expect(job.diagram.wires.map((wire) => `${wire.from}-${wire.to}`).sort()).toEqual([
    "F1:2-X2:1",
    "X2:1-X3:1",
    "X2:1-X3:1",
    "X3:1-F2:1",
  ]);
});

test("a wire that ends on empty ground goes on, not traced", () => {
  const job = edit(twoFuses(), (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "X1:1" },
      to: { on: "open", at: [200, 90] },
      corners: [],
    });
  });
  const end = found(job.diagram.parts, "X2");
  expect(end).toMatchObject({ kind: "offpage", at: [200, 90], turn: 270 });
  expect("label" in end).toBe(false);
});

test("a pin is not wired to itself", () => {
  const job = twoFuses();
  const after = edit(job, (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "F1:1" },
      to: { on: "pin", ref: "F1:1" },
      corners: [[0, 50]],
    });
  });
  expect(after).toBe(job);
});

test("a wire's end moves to another pin", () => {
  const job = edit(twoFuses(), (draft) =>
    moveWireEnd(draft, "W1", "to", { on: "pin", ref: "X1:1" }, [[200, 0]]),
  );
  expect(found(job.diagram.wires, "W1")).toMatchObject({ to: "X1:1", path: [[200, 0]] });
});

test("an end that leaves a splice or an untraced end lets the wires there be one again", () => {
  const before = twoFuses();
  const joined = edit(before, (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "X1:1" },
      to: { on: "wire", wire: "W1", at: [200, 0] },
      corners: [],
    });
  });
  const branch = joined.diagram.wires.find((wire) => wire.from === "X1:1")?.id ?? "";
  const open = edit(joined, (draft) =>
    moveWireEnd(draft, branch, "to", { on: "open", at: [200, 150] }, []),
  );
  expect(open.diagram.parts.map((part) => part.kind)).toEqual([
    "fuse",
    "fuse",
    "ground",
    "offpage",
  ]);
  expect(open.diagram.wires.map((wire) => wire.id)).toEqual(["W1", branch]);
  const home = edit(open, (draft) =>
    moveWireEnd(draft, branch, "to", { on: "pin", ref: "F2:2" }, []),
  );
  expect(home.diagram.parts).toEqual(before.diagram.parts);
});

test("taking out the third wire at a splice makes one wire of the other two again", () => {
  const before = twoFuses();
  const joined = edit(before, (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "X1:1" },
      to: { on: "wire", wire: "W1", at: [200, 0] },
      corners: [],
    });
  });
  const branch = joined.diagram.wires.find((wire) => wire.from === "X1:1");
  const after = edit(joined, (draft) => removeThings(draft, [branch?.id ?? ""]));
  expect(after).toEqual(before);
});

test("two unlike wires at a splice stay two", () => {
  const joined = edit(twoFuses(), (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: "X1:1" },
      to: { on: "wire", wire: "W1", at: [200, 0] },
      corners: [],
    });
    for (const wire of draft.diagram.wires) if (wire.to === "F2:1") wire.colour = { base: "BK" };
  });
  const branch = joined.diagram.wires.find((wire) => wire.from === "X1:1");
  const after = edit(joined, (draft) => removeThings(draft, [branch?.id ?? ""]));
  expect(after.diagram.wires).toHaveLength(2);
  expect(after.diagram.parts.some((part) => part.kind === "splice")).toBe(true);
});

test("deleting a part takes its wires and links along and leaves no dangling reference", () => {
  const job = edit(twoFuses(), (draft) => {
    draft.links.push({ pin: "F1:1", cavity: "P:1" });
    removeThings(draft, ["F1"]);
  });
  expect(job.diagram.wires).toEqual([]);
  expect(job.links).toEqual([]);
});
