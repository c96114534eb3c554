import fc from "fast-check";
import { describe, expect, test } from "vitest";
import "../../support/seed.ts";
import { distance, type Point } from "../../../src/base/index.ts";
import { pinPosition } from "../../../src/circuit/index.ts";
import { type Job, newJob, readJobText, writeJobText } from "../../../src/job/index.ts";
import {
  bowIn,
  NOT_SQUARED,
  planOf,
  type Squaring,
  toPicture,
  USUAL_STEPS,
} from "../../../src/scan/index.ts";
import { createSession, setSquaring } from "../../../src/session/index.ts";
import {
  moveBetween,
  rounded,
  squareUpSheet,
  squaringOf,
  squaringProblem,
} from "../../../src/session/scan/index.ts";

const PHOTO = { file: "images/photo.jpg", width: 1600, height: 1200 };
const image = (squaring: Squaring, file = "images/squared.png") => {
  const plan = planOf(squaring, PHOTO);
  if (!plan) throw new Error("no page");
  return { file, width: plan.width, height: plan.height };
};

const SKEWED: Squaring = {
  ...NOT_SQUARED,
  corners: [
    [210, 150],
    [1440, 90],
    [1520, 1080],
    [120, 1010],
  ],
};

/** A battery, a module with two pins of its own places and a wire with corners, over the photo. */
function drawnJob(): Job {
  const job = newJob("Photo", 24);
  const placed = { sheet: "sheet1", turn: 0 };
  return {
    ...job,
    diagram: {
      sheets: [{ id: "sheet1", image: PHOTO }, { id: "sheet2" }],
      parts: [
        { ...placed, id: "G1", kind: "battery", at: [400, 400], unit: 8 },
        {
          ...placed,
          id: "A1",
          kind: "module",
          at: [1000, 600],
          size: [200, 120],
          pins: [
            { id: "1", at: [-100, 20] },
            { id: "2", at: [100, -30] },
          ],
        },
        { id: "F1", kind: "fuse", sheet: "sheet2", at: [5, 5], turn: 90 },
      ],
      wires: [
        { id: "W1", from: "G1:+", to: "A1:1", path: [[400, 620]] },
        { id: "W2", from: "F1:1", to: "A1:2", path: [[7, 7]] },
      ],
    },
  };
}

const opened = (job = drawnJob()) => createSession("key", job);

describe("squaring a sheet's picture up", () => {
  test("is one edit that keeps the original and says how the picture was made", () => {
    const session = opened();
    const squaring = {
      ...SKEWED,
      bow: bowIn(1600, 1200, -0.02),
      level: 0.5,
      margin: 12,
      crop: { left: 3, top: 4, right: 900, bottom: 700 },
    };
    const before = session.get().job;
    squareUpSheet(session, "sheet1", {
      squaring,
      cleaning: [USUAL_STEPS.flatten, USUAL_STEPS.inks],
      image: image(squaring),
    });
    const { job, history } = session.get();
    expect(history.done.map(({ label }) => label)).toEqual(["Square up the picture"]);
    expect(job.diagram.sheets[0]).toEqual({
      id: "sheet1",
      image: image(squaring),
      original: PHOTO,
      corners: SKEWED.corners,
      squaring: { bow: -0.02, level: 0.5, margin: 12, crop: squaring.crop },
      cleaning: [{ does: "flatten" }, { does: "inks", keep: ["black"] }],
    });
    const read = readJobText(writeJobText(job));
    expect(read.ok && squaringOf(read.value.diagram.sheets[0] as never)).toEqual(squaring);
    session.undo();
    expect(session.get().job).toEqual(before);
  });

  test("keeps what is drawn over the same spots of the photo", () => {
    const job = drawnJob();
    setSquaring(job, "sheet1", { squaring: SKEWED, cleaning: [], image: image(SKEWED) });
    const plan = planOf(SKEWED, PHOTO);
    const [battery, module] = job.diagram.parts;
    const back = (at: Point | null | undefined) => plan && at && toPicture(plan, at);
    const near = (at: Point | null | undefined, spot: Point) =>
      expect(distance(back(at) ?? [-9, -9], spot)).toBeLessThan(0.05);
    near(battery?.at, [400, 400]);
    near(module?.at, [1000, 600]);
    near(module && pinPosition(module, "1"), [900, 620]);
    near(module && pinPosition(module, "2"), [1100, 570]);
    near(job.diagram.wires[0]?.path?.[0], [400, 620]);
  });

  test("leaves other sheets and the wires that go there alone", () => {
    const job = drawnJob();
    setSquaring(job, "sheet1", { squaring: SKEWED, cleaning: [], image: image(SKEWED) });
    expect(job.diagram.parts[2]).toEqual(drawnJob().diagram.parts[2]);
    expect(job.diagram.wires[1]).toEqual(drawnJob().diagram.wires[1]);
  });

  test("turns parts by the quarter, with their size and their pins", () => {
    const job = drawnJob();
    const squaring: Squaring = { ...NOT_SQUARED, quarters: 1 };
    setSquaring(job, "sheet1", { squaring, cleaning: [], image: image(squaring) });
    const [battery, module] = job.diagram.parts;
    // A quarter clockwise: x becomes the distance from the bottom, y is x.
    expect(battery).toMatchObject({ at: [799, 400], turn: 90, unit: 8 });
    expect(module).toMatchObject({
      at: [599, 1000],
      turn: 90,
      size: [200, 120],
      pins: [{ at: [-100, 20] }, { at: [100, -30] }],
    });
    expect(module).not.toHaveProperty("unit");
    expect(job.diagram.wires[0]?.path).toEqual([[579, 400]]);
  });

  test("shifts everything by what is cut off, and brings it back", () => {
    const job = drawnJob();
    const half: Squaring = {
      ...NOT_SQUARED,
      corners: [
        [399.5, 299.5],
        [1199.5, 299.5],
        [1199.5, 899.5],
        [399.5, 899.5],
      ],
    };
    const back = { ...NOT_SQUARED };
    setSquaring(job, "sheet1", { squaring: half, cleaning: [], image: image(half) });
    expect(job.diagram.parts[0]).toMatchObject({ at: [0, 100], unit: 8, turn: 0 });
    setSquaring(job, "sheet1", { squaring: back, cleaning: [], image: null });
    expect(job).toEqual(drawnJob());
  });

  test("makes symbols as much larger as the picture becomes around them", () => {
    // The page's upper edge is seen half as long as its lower one, which the result is as wide as.
    const squaring: Squaring = {
      ...NOT_SQUARED,
      corners: [
        [500, 100],
        [1100, 100],
        [1400, 1100],
        [200, 1100],
      ],
    };
    const { width, height } = image(squaring);
    expect(width).toBe(1200);
    const at = (y: number) => {
      const job = drawnJob();
      const [battery] = job.diagram.parts;
      if (battery) Object.assign(battery, { at: [800, y], unit: 10 });
      setSquaring(job, "sheet1", { squaring, cleaning: [], image: image(squaring) });
      return job.diagram.parts[0]?.unit ?? 10;
    };
    // By hand: t of the way down the photo the page is 600 (1 + t) wide, and that place lies at
    // 2 t / (1 + t) of the page's height.
    const larger = (t: number) => {
      const across = 2 / (1 + t);
      const down = (height * 2) / (1000 * (1 + t) ** 2);
      return Math.sqrt(across * down);
    };
    for (const t of [0.1, 0.5, 0.9]) expect(at(100 + 1000 * t)).toBeCloseTo(10 * larger(t), 1);
  });

  test("takes answers about lines and the changes of every machine along", () => {
    const job = drawnJob();
    const quarter: Squaring = { ...NOT_SQUARED, quarters: 2 };
    const change = (id: string) => ({
      note: "Lamp fitted",
      parts: [
        { id, kind: "lamp" as const, sheet: "sheet1", at: [100, 50] as [number, number], turn: 0 },
      ],
      wires: [{ id: `W${id}`, from: `${id}:1`, to: "G1:+", path: [[100, 60] as [number, number]] }],
    });
    const machine = job.machines[0];
    if (!machine) throw new Error("no machine");
    const own = { ...machine, changes: [{ note: "Battery gone", without: ["G1"] }, change("P1")] };
    const other = { ...machine, id: "M2", changes: [change("P2")] };
    const sheet = {
      ...job.diagram.sheets[0],
      id: "sheet1",
      answers: [{ at: [9, 9] as [number, number], joined: true }],
    };
    const session = opened({
      ...job,
      machines: [own, other],
      diagram: {
        ...job.diagram,
        sheets: [sheet],
        parts: job.diagram.parts.slice(0, 2),
        wires: job.diagram.wires.slice(0, 1),
      },
    });
    squareUpSheet(session, "sheet1", { squaring: quarter, cleaning: [], image: image(quarter) });
    const { diagram, machines } = session.get().job;
    expect(diagram.sheets[0]?.answers).toEqual([{ at: [1590, 1190], joined: true }]);
    // The machine shown is without the battery; on the others it lies where the picture has it.
    expect(diagram.parts[0]).toMatchObject({ id: "G1", at: [1199, 799], turn: 180 });
    for (const [index, at] of [
      [0, 1],
      [1, 0],
    ] as const) {
      const moved = machines[index]?.changes?.[at];
      expect(moved?.parts?.[0]).toMatchObject({ at: [1499, 1149], turn: 180 });
      expect(moved?.wires?.[0]?.path).toEqual([[1499, 1139]]);
    }
  });

  test("that changes nothing leaves the original as the picture and no fields behind", () => {
    const session = opened();
    const before = session.get().job;
    squareUpSheet(session, "sheet1", { squaring: SKEWED, cleaning: [], image: image(SKEWED) });
    squareUpSheet(session, "sheet1", { squaring: NOT_SQUARED, cleaning: [], image: null });
    const [sheet] = session.get().job.diagram.sheets;
    expect(sheet).toEqual({ id: "sheet1", image: PHOTO });
    const { parts } = session.get().job.diagram;
    expect(distance(parts[0]?.at ?? [0, 0], before.diagram.parts[0]?.at ?? [9, 9])).toBeLessThan(
      0.02,
    );
  });

  test("to what it is already moves nothing", () => {
    const session = opened();
    squareUpSheet(session, "sheet1", { squaring: SKEWED, cleaning: [], image: image(SKEWED) });
    const { parts, wires } = session.get().job.diagram;
    squareUpSheet(session, "sheet1", {
      squaring: SKEWED,
      cleaning: [USUAL_STEPS.flatten],
      image: image(SKEWED, "images/cleaned.png"),
    });
    expect(session.get().job.diagram.parts).toBe(parts);
    expect(session.get().job.diagram.wires).toBe(wires);
    expect(session.get().job.diagram.sheets[0]?.image?.file).toBe("images/cleaned.png");
  });
});

describe("a squaring is refused in one sentence", () => {
  test("that mirrors a sheet with parts on it, back as well as forth", () => {
    const mirrored: Squaring = { ...NOT_SQUARED, isMirrored: true };
    const job = drawnJob();
    expect(squaringProblem(job, "sheet1", mirrored)).toMatch(/Parts are drawn on this sheet/);
    const bare = { ...job, diagram: { ...job.diagram, parts: [], wires: [] } };
    expect(squaringProblem(bare, "sheet1", mirrored)).toBeNull();
    setSquaring(bare, "sheet1", { squaring: mirrored, cleaning: [], image: image(mirrored) });
    const drawn = { ...bare, diagram: { ...bare.diagram, parts: job.diagram.parts } };
    expect(squaringProblem(drawn, "sheet1", { ...mirrored, quarters: 1 })).toBeNull();
    expect(squaringProblem(drawn, "sheet1", NOT_SQUARED)).toMatch(/mirroring/);
  });

  test("where parts of a machine's change lie on the sheet", () => {
    const job = newJob("Photo", 24);
    const [machine] = job.machines;
    if (!machine) throw new Error("no machine");
    const parts = [
      { id: "P1", kind: "lamp" as const, sheet: "sheet1", at: [1, 1] as [number, number], turn: 0 },
    ];
    const changed = {
      ...job,
      diagram: { ...job.diagram, sheets: [{ id: "sheet1", image: PHOTO }] },
      machines: [{ ...machine, changes: [{ note: "Lamp", parts }] }],
    };
    expect(squaringProblem(changed, "sheet1", { ...NOT_SQUARED, isMirrored: true })).not.toBeNull();
  });

  test("whose corners cross, and one of a sheet without a picture", () => {
    const [a, b, c, d] = SKEWED.corners ?? [];
    const crossed = { ...SKEWED, corners: [a, c, b, d] as never };
    expect(squaringProblem(drawnJob(), "sheet1", crossed)).toMatch(/make no page/);
    expect(squaringProblem(drawnJob(), "sheet2", SKEWED)).toMatch(/no picture/);
  });

  test("that shows too much beyond its corners, with another sentence: the corners are right", () => {
    const wide = { ...SKEWED, margin: 20_000 };
    expect(squaringProblem(drawnJob(), "sheet1", SKEWED)).toBeNull();
    expect(squaringProblem(drawnJob(), "sheet1", wide)).toMatch(/^With so much shown beyond/);
  });
});

describe("from one squaring to another and back", () => {
  const near = (x: number, y: number) =>
    fc.tuple(fc.integer({ min: x, max: x + 350 }), fc.integer({ min: y, max: y + 250 }));
  const quads = fc.tuple(near(20, 20), near(1220, 20), near(1220, 920), near(20, 920));
  const squarings = fc
    .record({
      corners: fc.option(quads),
      k: fc.double({ min: -0.08, max: 0.08, noNaN: true }),
      margin: fc.integer({ min: 0, max: 60 }),
      level: fc.double({ min: -8, max: 8, noNaN: true }),
      quarters: fc.constantFrom(0, 1, 2, 3),
      isMirrored: fc.boolean(),
    })
    .map(({ k, ...rest }) =>
      rounded({ ...rest, bow: bowIn(1600, 1200, k), crop: null } as unknown as Squaring),
    );

  test("every place of the page is the same again within half a pixel", () => {
    fc.assert(
      fc.property(
        squarings,
        squarings,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (one, other, across, down) => {
          const [was, will] = [planOf(one, PHOTO), planOf(other, PHOTO)];
          if (!was || !will) throw new Error("no page");
          const at: Point = [across * (was.width - 1), down * (was.height - 1)];
          const there = moveBetween(was, will).to(at);
          expect(distance(moveBetween(will, was).to(there), at)).toBeLessThan(0.5);
        },
      ),
    );
  });

  test("parts, pins, boxes and corners of wires are, too", () => {
    const upright = squarings.map((squaring) => ({ ...squaring, isMirrored: false }));
    fc.assert(
      fc.property(upright, upright, (one, other) => {
        const first = drawnJob();
        setSquaring(first, "sheet1", { squaring: one, cleaning: [], image: image(one) });
        const second = structuredClone(first);
        setSquaring(second, "sheet1", { squaring: other, cleaning: [], image: image(other) });
        setSquaring(second, "sheet1", { squaring: one, cleaning: [], image: image(one) });
        first.diagram.parts.forEach((part, n) => {
          const again = second.diagram.parts[n];
          expect(again?.turn).toBe(part.turn);
          expect(distance(again?.at ?? [0, 0], part.at)).toBeLessThan(0.5);
          expect(again?.unit ?? 10).toBeCloseTo(part.unit ?? 10, 1);
          if (part.kind !== "module" || again?.kind !== "module") return;
          for (const pin of ["1", "2"]) {
            const [was, is] = [pinPosition(part, pin), pinPosition(again, pin)];
            expect(was && is ? distance(was, is) : 99).toBeLessThan(0.5);
          }
        });
        const [was, is] = [first, second].map((job) => job.diagram.wires[0]?.path?.[0]);
        expect(was && is ? distance(was, is) : 99).toBeLessThan(0.5);
      }),
    );
  });
});
