import { describe, expect, test } from "vitest";
import { pinsOf, toSheet } from "../../../src/circuit/index.ts";
import type { Job, PartKindName } from "../../../src/job/index.ts";
import type { SymbolProposal, SymbolSearch } from "../../../src/scan/index.ts";
import {
  createPageDesk,
  createPartsDesk,
  createSession,
  layNets,
  placeProposals,
  type TracePort,
} from "../../../src/session/index.ts";
import { drawing, edit } from "../diagram/drawing.ts";
import { pictured, settled } from "./fake-trace.ts";
import { wholeNet } from "./picture-net.ts";

const proposal = (
  kind: SymbolProposal["kind"],
  [x, y]: readonly [number, number],
  confidence: number,
  more: Partial<SymbolProposal> = {},
): SymbolProposal => ({
  kind,
  box: { left: x - 20, top: y - 8, right: x + 20, bottom: y + 8 },
  at: [x, y],
  turn: 0,
  unit: 10,
  confidence,
  ends: [
    [x - 20, y],
    [x + 20, y],
  ],
  others: [],
  ...more,
});

/** A session over a picture on which these things are found. */
function proposing(job: Job, found: readonly SymbolProposal[]) {
  const session = createSession("job", pictured(job));
  const asked: SymbolSearch[] = [];
  const port = {
    open: async () => ({ width: 800, height: 600, lineWidth: 3 }),
    findParts: async (ask: SymbolSearch) => {
      asked.push(ask);
      return found;
    },
    callOff: () => {},
    close: () => {},
  } as unknown as TracePort;
  const picture = { bytes: new Uint8Array(), type: "image/png" };
  const pages = createPageDesk(
    session,
    () => port,
    async () => picture,
  );
  const desk = createPartsDesk(session, pages);
  const kinds = () => session.get().job.diagram.parts.map(({ id, kind }) => `${id} ${kind}`);
  return { session, desk, asked, kinds };
}

const FOUND = [
  proposal("fuse", [100, 100], 0.97),
  proposal("lamp", [300, 100], 0.9, { turn: 90 }),
  proposal("diode", [500, 100], 0.6, { others: [{ kind: "switch", confidence: 0.4 }] }),
  proposal("resistor", [500, 300], 0.3),
];

describe("parts proposed from a picture", () => {
  test("nothing is placed by finding; the sure ones come first", async () => {
    const { desk, kinds } = proposing(drawing([]), FOUND);
    await desk.find();
    expect(kinds()).toEqual([]);
    expect(desk.items().map(({ kind, sureness }) => `${kind} ${sureness}`)).toEqual([
      "fuse sure",
      "lamp sure",
      "diode likely",
      "resistor maybe",
    ]);
  });

  test("all that are sure are placed in one edit, and undoing it proposes them again", async () => {
    const { desk, session, kinds } = proposing(drawing([]), FOUND);
    await desk.find();
    desk.placeSure();
    expect(kinds()).toEqual(["F1 fuse", "P1 lamp"]);
    expect(session.get().selection).toEqual([]);
    // The picture was not read for values: none is written, as if it stood there.
    for (const part of session.get().job.diagram.parts) {
      expect(part).not.toHaveProperty("amps");
      expect(part).not.toHaveProperty("watts");
    }
    expect(desk.items().map(({ kind }) => kind)).toEqual(["diode", "resistor"]);
    session.undo();
    expect(kinds()).toEqual([]);
    expect(desk.items()).toHaveLength(4);
  });

  test("one is placed as what the user says it is; the next is at hand", async () => {
    const { desk, kinds } = proposing(drawing([]), FOUND);
    await desk.find();
    const diode = desk.items().find(({ kind }) => kind === "diode")?.id ?? "";
    desk.choose(diode);
    desk.say(diode, "switch");
    expect(desk.items().find(({ id }) => id === diode)).toMatchObject({
      kind: "switch",
      sureness: "sure",
      caution: "Check its contacts and positions.",
    });
    desk.place(diode);
    expect(kinds()).toEqual(["S1 switch"]);
    expect(desk.items().find(({ id }) => id === desk.get().chosen)?.kind).toBe("resistor");
  });

  test("what is left is shown no more, until the picture is looked over anew", async () => {
    const { desk, session } = proposing(drawing([]), FOUND);
    await desk.find();
    const before = session.get().job;
    desk.step(1);
    desk.leave(desk.get().chosen ?? "");
    expect(desk.items().map(({ kind }) => kind)).toEqual(["lamp", "diode", "resistor"]);
    expect(session.get().job).toBe(before);
    await desk.findAgain();
    expect(desk.items()).toHaveLength(4);
  });

  test("put away and opened again it is as it was left, and the picture is not looked over again", async () => {
    const { desk, asked } = proposing(drawing([]), FOUND);
    await desk.find();
    desk.step(1);
    desk.leave(desk.get().chosen ?? "");
    desk.close();
    await desk.find();
    expect(desk.get().isOpen).toBe(true);
    expect(desk.items().map(({ kind }) => kind)).toEqual(["lamp", "diode", "resistor"]);
    expect(asked).toHaveLength(1);
  });

  test("opened again it is looked over anew where another part is placed or another picture is there", async () => {
    const { desk, session, asked } = proposing(
      drawing([{ id: "K5", kind: "relay", at: [700, 500] }]),
      FOUND,
    );
    await desk.find();
    desk.placeSure();
    desk.close();
    await desk.find();
    expect(asked).toHaveLength(2);
    // What is written at a part is nothing that its symbol is found by.
    session.edit("Name a part", (draft) => {
      for (const part of draft.diagram.parts) part.label = "pump";
    });
    await desk.find();
    expect(asked).toHaveLength(2);
    session.edit("Move a part", (draft) => {
      for (const part of draft.diagram.parts) if (part.id === "K5") part.at = [700, 540];
    });
    await desk.find();
    expect(asked).toHaveLength(3);
    session.editWhole("Clean the picture", (draft) => {
      for (const sheet of draft.diagram.sheets)
        if (sheet.image) sheet.image = { ...sheet.image, file: "images/cleaned.png" };
    });
    await desk.find();
    expect(asked).toHaveLength(4);
  });

  test("what was found like one part is not all that is found", async () => {
    const job = drawing([{ id: "P5", kind: "lamp", at: [700, 500] }]);
    const { desk, asked } = proposing(job, FOUND);
    await desk.findMoreLike("P5");
    await desk.find();
    expect(asked).toHaveLength(2);
    expect(desk.items()).toHaveLength(4);
  });

  test("what is placed over it is not proposed, and is an example", async () => {
    const job = drawing([{ id: "F7", kind: "fuse", at: [101, 101] }]);
    const { desk, asked } = proposing(job, FOUND);
    await desk.find();
    expect(desk.items().map(({ kind }) => kind)).toEqual(["lamp", "diode", "resistor"]);
    expect(asked[0]?.examples.map(({ id, kind, turn }) => ({ id, kind, turn }))).toEqual([
      { id: "F7", kind: "fuse", turn: 0 },
    ]);
  });

  test("more like a placed part are those that look like it", async () => {
    const job = drawing([{ id: "P5", kind: "lamp", at: [700, 500] }]);
    const alike = proposal("lamp", [300, 300], 0.9, { example: "P5" });
    const { desk, asked } = proposing(job, [...FOUND, alike]);
    await desk.findMoreLike("P5");
    expect(asked[0]?.examples.map(({ id }) => id)).toEqual(["P5"]);
    expect(desk.items().map(({ proposal: { at } }) => at)).toEqual([[300, 300]]);
  });

  test("joints are kept apart, placed only when asked, and gone where a splice is", async () => {
    const joint = (x: number, confidence: number) =>
      proposal("splice", [x, 400], confidence, { ends: [[x, 400]] });
    const dots = [joint(100, 0.95), joint(300, 0.95), joint(500, 0.55)];
    const job = drawing([{ id: "SP", kind: "splice", at: [302, 401] }]);
    const { desk, session, kinds } = proposing(job, [...FOUND, ...dots]);
    await desk.find();
    expect(desk.items()).toHaveLength(4);
    expect(desk.joints().map(({ sureness }) => sureness)).toEqual(["sure", "likely"]);
    desk.placeSure();
    expect(kinds()).toEqual(["SP splice", "F1 fuse", "P1 lamp"]);
    desk.placeJoints();
    expect(kinds()).toEqual(["SP splice", "F1 fuse", "P1 lamp", "X1 splice"]);
    expect(desk.joints().map(({ sureness }) => sureness)).toEqual(["likely"]);
    session.undo();
    expect(desk.joints()).toHaveLength(2);
    desk.choose(desk.joints()[0]?.id ?? null);
    desk.step(1);
    expect(desk.get().chosen).toBe(desk.joints()[1]?.id);
    desk.leave(desk.get().chosen ?? "");
    expect(desk.joints().map(({ proposal: { at } }) => at[0])).toEqual([100]);
  });

  test("another sheet or picture forgets what was found", async () => {
    const { desk, session } = proposing(drawing([]), FOUND);
    await desk.find();
    session.edit("Another picture", (draft) => {
      const image = draft.diagram.sheets[0]?.image;
      if (image) image.file = "images/other.png";
    });
    await settled();
    expect(desk.items()).toEqual([]);
    expect(desk.get().isOpen).toBe(false);
  });
});

describe("placing what was found", () => {
  const place = (...found: readonly SymbolProposal[]) => {
    let ids: readonly string[] = [];
    const job = edit(drawing([]), (draft) => {
      const accepted = found.map((one) => ({ kind: one.kind as PartKindName, proposal: one }));
      ids = placeProposals(draft, draft.diagram.sheets[0]?.id ?? "", accepted);
    });
    return ids.map((id) => job.diagram.parts.find((part) => part.id === id));
  };

  test("names run as one reads, whatever order they were found in", () => {
    const ids = place(
      proposal("fuse", [400, 300], 1),
      proposal("fuse", [400, 100], 1),
      proposal("fuse", [100, 104], 1),
    ).map((part) => part?.id);
    expect(ids).toEqual(["F3", "F2", "F1"]);
  });

  test("what was drawn to one size is placed in one size; what was not keeps its own", () => {
    const units = [10, 10.4, 9.6, 20].map((unit, n) =>
      proposal("fuse", [100 + 150 * n, 100], 1, { unit }),
    );
    expect(place(...units).map((part) => part?.unit)).toEqual([10.4, 10.4, 10.4, 20]);
  });

  test("a module has its size and its pins where lines leave it", () => {
    const [module] = place(
      proposal("module", [300, 200], 1, {
        box: { left: 200, top: 150, right: 400, bottom: 250 },
        ends: [],
        pins: [
          { at: [260, 149], side: "top" },
          { at: [201, 210], side: "left" },
          { at: [330, 252], side: "bottom" },
        ],
      }),
    );
    expect(module).toMatchObject({
      at: [300, 200],
      size: [200, 100],
      pins: [
        { id: "1", at: [-40, -50] },
        { id: "2", at: [-100, 10] },
        { id: "3", at: [30, 50] },
      ],
    });
  });

  test("an inline plug has a pin for each line that passes, each on its line", () => {
    const [one, three] = place(
      proposal("inline", [100, 100], 1),
      proposal("inline", [300, 200], 1, { ways: 3, unit: 17 }),
    );
    expect(one).toMatchObject({ pins: [{ id: "1" }] });
    expect(three).toMatchObject({ at: [300, 200], unit: 17 });
    if (!three) throw new Error("no plug");
    expect(pinsOf(three).map(({ at }) => toSheet(three, at))).toEqual([
      [300, 166],
      [300, 200],
      [300, 234],
    ]);
  });

  test("a joint that is placed is the splice of tracing, and no second one is made", () => {
    const job = drawing([
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [260, 100] },
      { id: "X1", kind: "ground", at: [160, 300] },
    ]);
    const joint = proposal("splice", [161.2, 99.4], 0.95, { unit: 14 });
    const placed = edit(job, (draft) => {
      placeProposals(draft, "s1", [{ kind: "splice", proposal: joint }]);
    });
    const net = wholeNet(
      [[[92, 100], "F1:2"], [[229, 100], "F2:1"], [[161.2, 99.4]], [[160, 298], "X1:1"]],
      [
        [0, 2],
        [2, 1],
        [2, 3],
      ],
    );
    const traced = edit(placed, (draft) => {
      layNets(draft, "s1", [net], []);
    });
    const splices = traced.diagram.parts.filter(({ kind }) => kind === "splice");
    expect(splices).toHaveLength(1);
    const pin = `${splices[0]?.id}:1`;
    expect(traced.diagram.wires).toHaveLength(3);
    for (const { from, to } of traced.diagram.wires) expect([from, to]).toContain(pin);
  });

  test("a switch with three lines has two contacts; one drawn closed is closed at rest", () => {
    const ends = [
      [80, 100],
      [120, 90],
      [120, 110],
    ] as const;
    const [over, closed] = place(
      proposal("switch", [100, 100], 1, { ends }),
      proposal("switch", [300, 100], 1, { isClosed: true }),
    );
    expect(over).toMatchObject({
      contacts: [{ between: ["1", "2"] }, { between: ["1", "3"] }],
      rest: "off",
    });
    expect(closed).toMatchObject({ rest: "on", contacts: [{ closedIn: ["on"] }] });
  });
});
