import { describe, expect, test } from "vitest";
import { distance, seededRandom } from "../../../src/base/index.ts";
import type { Grey } from "../../../src/scan/raster.ts";
import type { Pen } from "../../support/drawn-symbols/page.ts";
import { found, page, ring, SURE, wire } from "../../support/drawn-symbols/small-page.ts";

/** Milliseconds that they may take beside other work. */
const PATIENCE = 120_000;

describe("what is no symbol", () => {
  test("words alone are none, whatever their letters look like", () => {
    const words = page((pen) => {
      ["O 0 8 H E M X", "15-4 RD/WH  87a", "Ø B2 (M) = - / \\", "PUMP HOLD MODULE"].forEach(
        (text, n) => {
          pen.font = `${26 + 8 * n}px sans-serif`;
          pen.fillText(text, 40, 80 + 110 * n);
        },
      );
    });
    expect(found(words).filter(({ confidence }) => confidence >= 0.5)).toEqual([]);
  });

  test("crossings, corners, a frame and a plug's face are none", () => {
    const lines = page((pen) => {
      pen.strokeRect(10, 10, 780, 480);
      wire(pen, [60, 100], [400, 100], [400, 300]);
      wire(pen, [200, 40], [200, 300]);
      pen.strokeRect(500, 150, 200, 120);
      pen.strokeRect(560, 120, 80, 30);
      for (const x of [540, 600, 660]) ring(pen, x, 210, 18);
      wire(pen, [648, 198], [672, 222]);
      wire(pen, [648, 222], [672, 198]);
    });
    expect(found(lines).filter(({ confidence }) => confidence >= 0.5)).toEqual([]);
  });

  test(
    "a circle on a line is a motor only by its M",
    () => {
      const machine = (letter: string) =>
        page((pen) => {
          wire(pen, [60, 250], [360, 250]);
          wire(pen, [440, 250], [740, 250]);
          ring(pen, 400, 250, 40);
          pen.font = "42px sans-serif";
          pen.textAlign = "center";
          pen.textBaseline = "middle";
          pen.fillText(letter, 400, 250);
        });
      const motors = (letter: string) =>
        found(machine(letter)).filter(
          ({ kind, confidence }) => kind === "motor" && confidence >= SURE,
        );
      expect(motors("M")).toHaveLength(1);
      for (const letter of ["G", "V", "A", "N", "H"]) expect(motors(letter), letter).toEqual([]);
    },
    PATIENCE,
  );
});

test("a proposal covers what is printed", () => {
  const fuse = page((pen) => {
    wire(pen, [60, 250], [740, 250]);
    pen.strokeRect(340, 226, 120, 48);
  });
  const [proposal] = found(fuse);
  expect(proposal).toMatchObject({ kind: "fuse", turn: 0 });
  expect(distance(proposal?.at ?? [0, 0], [400, 250])).toBeLessThan(4);
  // Our own fuse is four units long: its drawing covers the printed box.
  expect(proposal?.unit).toBeGreaterThan(27);
  expect(proposal?.unit).toBeLessThan(33);
});

describe("inline plugs", () => {
  /** A pin's arrow in its socket's mouth, on a line from edge to edge. */
  const plug = (pen: Pen, y: number) => {
    wire(pen, [60, y], [390, y]);
    wire(pen, [364, y - 26], [390, y], [364, y + 26]);
    wire(pen, [388, y - 26], [414, y], [388, y + 26]);
    wire(pen, [414, y], [740, y]);
  };

  test("one on a line", () => {
    const sure = found(page((pen) => plug(pen, 250))).filter(
      ({ confidence }) => confidence >= SURE,
    );
    expect(sure).toMatchObject([{ kind: "inline", turn: 0 }]);
    expect(distance(sure[0]?.at ?? [0, 0], [390, 250])).toBeLessThan(20);
  });

  test("three in a column are one with three pins, each on its line", () => {
    const sure = found(
      page((pen) => {
        for (const y of [150, 240, 330]) plug(pen, y);
      }),
    ).filter(({ confidence }) => confidence >= SURE);
    expect(sure).toMatchObject([{ kind: "inline", ways: 3 }]);
    expect(sure[0]?.unit).toBeCloseTo(45, 0);
    expect(Math.abs((sure[0]?.at[1] ?? 0) - 240)).toBeLessThan(3);
  });
});

test("a symbol drawn into the frame around the sheet is not sure; the same within it is", () => {
  const framed = page((pen) => {
    pen.strokeRect(10, 10, 780, 480);
    pen.strokeRect(340, 466, 120, 48);
    wire(pen, [60, 250], [740, 250]);
    pen.strokeRect(340, 226, 120, 48);
  });
  const sure = found(framed).filter(({ confidence }) => confidence >= SURE);
  expect(sure.map(({ kind, at }) => [kind, Math.round(at[1] / 10)])).toEqual([["fuse", 25]]);
});

test("a line along the frame with ticks on it is no box, nor is a line that runs on", () => {
  const ticked = page((pen) => {
    pen.strokeRect(20, 20, 760, 460);
    wire(pen, [20, 440], [780, 440]);
    for (const x of [200, 300, 400, 500, 600]) wire(pen, [x, 440], [x, 480]);
    wire(pen, [60, 250], [740, 250]);
    wire(pen, [60, 226], [740, 226]);
    wire(pen, [60, 274], [740, 274]);
    for (const x of [340, 460]) wire(pen, [x, 226], [x, 274]);
  });
  expect(found(ticked).filter(({ confidence }) => confidence >= 0.5)).toEqual([]);
});

test("a fuse that a fold of the paper runs through is found, and is not sure", () => {
  const folded = page((pen) => {
    wire(pen, [60, 250], [740, 250]);
    pen.strokeRect(340, 226, 120, 48);
    wire(pen, [423, 20], [431, 480]);
  });
  const fuses = found(folded).filter(({ kind }) => kind === "fuse");
  expect(fuses).toHaveLength(1);
  expect(fuses[0]?.confidence).toBeGreaterThanOrEqual(0.5);
  expect(fuses[0]?.confidence).toBeLessThan(SURE);
});

describe("coils as half rounds", () => {
  /** Half rounds above a line from edge to edge, turned about its middle. */
  const coil = (pen: Pen, rounds: number, radius: number, degrees: number) => {
    pen.save();
    pen.translate(400, 250);
    pen.rotate((degrees * Math.PI) / 180);
    const half = rounds * radius;
    wire(pen, [-220, 60], [-220, 0], [-half, 0]);
    wire(pen, [half, 0], [220, 0], [220, 60]);
    pen.beginPath();
    for (let n = 0; n < rounds; n++) {
      pen.arc(-half + (2 * n + 1) * radius, 0, radius, Math.PI, 2 * Math.PI);
    }
    pen.stroke();
    pen.restore();
  };

  test("three, four or five of them, large and small, any way round", () => {
    for (const [rounds, radius, degrees] of [
      [3, 24, 0],
      [4, 12, 90],
      [5, 16, 180],
    ] as const) {
      const sure = found(page((pen) => coil(pen, rounds, radius, degrees))).filter(
        ({ confidence }) => confidence >= SURE,
      );
      expect(sure, `${rounds} of ${radius}`).toMatchObject([{ kind: "solenoid" }]);
      expect(distance(sure[0]?.at ?? [0, 0], [400, 250])).toBeLessThan(8);
    }
  });

  test("one half round is a line that jumps another, and no coil", () => {
    const jump = page((pen) => {
      coil(pen, 1, 20, 0);
      wire(pen, [400, 60], [400, 440]);
    });
    expect(found(jump).filter(({ confidence }) => confidence >= 0.5)).toEqual([]);
  });
});

test("a title block hung on the frame is no module; the same box on other lines is one", () => {
  const block = (pen: Pen, isHung: boolean) => {
    pen.strokeRect(10, 10, 780, 480);
    pen.strokeRect(500, 340, 200, 90);
    pen.font = "24px sans-serif";
    pen.fillText("SHEET 3", 530, 380);
    pen.fillText("LIFT", 530, 415);
    wire(pen, [600, 430], [600, isHung ? 490 : 455], ...(isHung ? [] : [[300, 455] as const]));
    wire(pen, [700, 380], [isHung ? 790 : 745, 380], ...(isHung ? [] : [[745, 100] as const]));
  };
  const modules = (isHung: boolean) =>
    found(page((pen) => block(pen, isHung))).filter(({ kind }) => kind === "module");
  expect(modules(true)).toEqual([]);
  expect(modules(false)).toHaveLength(1);
});

describe("a placed part is an example", () => {
  /** No symbol of any standard: a house on a line. */
  const house = (pen: Pen, x: number, y: number) => {
    wire(pen, [x - 130, y], [x - 40, y]);
    wire(pen, [x + 40, y], [x + 130, y]);
    wire(pen, [x - 40, y + 30], [x - 40, y - 10], [x, y - 44], [x + 40, y - 10], [x + 40, y + 30]);
    wire(pen, [x - 40, y + 30], [x + 40, y + 30]);
    wire(pen, [x - 14, y + 30], [x - 14, y + 4], [x + 14, y + 4], [x + 14, y + 30]);
  };
  const street = page((pen) => {
    for (const [x, y] of [
      [200, 120],
      [560, 130],
      [380, 350],
    ] as const)
      house(pen, x, y);
    pen.strokeRect(620, 320, 80, 60);
  });
  const example = {
    id: "M7",
    kind: "heater",
    box: { left: 140, top: 70, right: 260, bottom: 156 },
    at: [200, 120] as const,
    turn: 0,
    unit: 20,
    ends: [
      [140, 120],
      [260, 120],
    ] as const,
  };

  test("of what looks the same elsewhere on the page, and names it", () => {
    const alike = found(street, { examples: [example] }).filter((one) => one.example === "M7");
    expect(alike.every(({ kind, confidence }) => kind === "heater" && confidence >= SURE)).toBe(
      true,
    );
    const places = alike.map(({ at }) => at.map((value) => Math.round(value / 20) * 20));
    expect(places).toContainEqual([560, 140]);
    expect(places).toContainEqual([380, 360]);
  });

  test("and without it nobody takes it for what it is", () => {
    expect(found(street).filter(({ kind }) => kind === "heater")).toEqual([]);
  });
});

test("grain is refused with what to do, and not searched for minutes", () => {
  const random = seededRandom(1);
  const data = Uint8Array.from({ length: 220 * 220 }, () => random.below(2) * 255);
  const grain: Grey = { width: 220, height: 220, data };
  expect(() => found(grain)).toThrow("too much grain");
});
