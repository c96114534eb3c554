import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { beforeAll, describe, expect, test } from "vitest";
import { type Box, boxContains, distance, seededRandom } from "../../../src/base/index.ts";
import type { Job } from "../../../src/job/index.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { type Grey, greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { findSymbols, type SymbolSearch } from "../../../src/scan/symbols/find-symbols.ts";
import { judgedSheet } from "../../support/drawn-symbols/found.ts";
import { drawAlone, type Pen } from "../../support/drawn-symbols/page.ts";

/** `PINTRUTH_SEED` tries other pages: its number and the ones that follow. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const PAGES = 2;
/** Milliseconds that they may take beside other work. */
const PATIENCE = 120_000;
const SURE = 0.8;

const found = (grey: Grey, search: Partial<SymbolSearch> = {}) =>
  finished(findSymbols(finished(preparePage(grey)), { examples: [], known: [], ...search }));

const sheets = async (level: number) => {
  const judged = await Promise.all(
    Array.from({ length: PAGES }, (_, n) => judgedSheet(SEED + n, level)),
  );
  const proposals = judged.flatMap((one) => one.proposals);
  const sure = proposals.filter(({ proposal }) => proposal.confidence >= SURE);
  const doubtful = proposals.filter(({ proposal }) => proposal.confidence < 0.5);
  const share = (of: typeof proposals) => of.filter(({ isRight }) => isRight).length / of.length;
  return {
    parts: judged.reduce((sum, { parts }) => sum + parts, 0),
    found: judged.reduce((sum, { parts, missed }) => sum + parts - missed.length, 0),
    sure,
    doubtful,
    share,
  };
};

describe("symbols of pages whose parts are known", () => {
  test(
    "clean prints: nearly all are found, and what is sure is right",
    async () => {
      const { parts, found: right, sure, share } = await sheets(0);
      expect(right / parts, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.85);
      expect(sure.length, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(parts * 0.7);
      expect(share(sure), `PINTRUTH_SEED=${SEED}`).toBeGreaterThanOrEqual(0.93);
    },
    PATIENCE,
  );

  test(
    "copies with holes, blur, grain and shade: most are found, and what is sure is right",
    async () => {
      const { parts, found: right, sure, doubtful, share } = await sheets(0.4);
      expect(right / parts, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.75);
      expect(share(sure), `PINTRUTH_SEED=${SEED}`).toBeGreaterThanOrEqual(0.93);
      // A confidence says something: of the doubtful ones most are wrong.
      if (doubtful.length > 5) expect(share(doubtful), `PINTRUTH_SEED=${SEED}`).toBeLessThan(0.6);
    },
    PATIENCE,
  );
});

/** A page of 800 by 500 drawn with a pen of 4. */
const page = (draw: (pen: Pen) => void): Grey => greyFrom(drawAlone(800, 500, 4, draw));

const wire = (pen: Pen, ...points: (readonly [number, number])[]) => {
  pen.beginPath();
  for (const [x, y] of points) pen.lineTo(x, y);
  pen.stroke();
};

const ring = (pen: Pen, x: number, y: number, radius: number) => {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.stroke();
};

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

test("what is placed already is proposed no more", () => {
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
  expect(found(fuse, { known: [{ left: 320, top: 210, right: 480, bottom: 290 }] })).toEqual([]);
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

/** T. R. Kuphaldt, "Lessons in Electric Circuits" (Design Science License), not kept here. */
const FIGURE = fileURLToPath(new URL("../../../../shared/figures/DC_00131.png", import.meta.url));

test.skipIf(!existsSync(FIGURE))(
  "a published figure: its five batteries and four resistors, and nothing else that is sure",
  async () => {
    const sure = found(await greyOf(FIGURE)).filter(({ confidence }) => confidence >= SURE);
    const kinds = sure.map(({ kind }) => kind).sort();
    expect(kinds).toEqual([...Array(5).fill("battery"), ...Array(4).fill("resistor")]);
    // Middles of the boxes that its lines are traced between, measured on the picture.
    const middles = [
      [70, 198],
      [228, 86],
      [363, 86],
      [228, 251],
      [363, 251],
      [228, 139],
      [363, 139],
      [228, 304],
      [363, 304],
    ] as const;
    for (const middle of middles) {
      expect(sure.filter(({ at }) => distance(at, middle) < 5)).toHaveLength(1);
    }
  },
  PATIENCE,
);

async function greyOf(file: string | URL): Promise<Grey> {
  const image = await loadImage(await readFile(file));
  const { width, height } = image;
  const pen = createCanvas(width, height).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.drawImage(image, 0, 0);
  return greyFrom({ width, height, data: pen.getImageData(0, 0, width, height).data });
}

/** The demo's picture with what is drawn over it by hand, and what is found on it. */
async function demo() {
  const url = (file: string) => new URL(`../../../sample-data/sweeper/${file}`, import.meta.url);
  const job: Job = JSON.parse(await readFile(url("job.json"), "utf8"));
  const proposals = found(await greyOf(url("images/sweeper-sheet-7.jpg")));
  const sure = proposals.filter(({ confidence }) => confidence >= SURE);
  const drawn = job.diagram.parts.filter(({ kind }) => kind !== "splice");
  return { proposals, sure, drawn };
}

describe("the demo's scan", () => {
  let looked: Awaited<ReturnType<typeof demo>>;
  beforeAll(async () => {
    looked = await demo();
  }, PATIENCE);

  test("every part that is drawn is found and sure, and nothing else is", () => {
    const { sure, drawn } = looked;
    const kindsOf = (list: readonly { readonly kind: string }[]) =>
      list.map(({ kind }) => kind).sort();
    expect(kindsOf(sure)).toEqual(kindsOf(drawn));
    for (const { id, kind, at } of drawn) {
      const near = sure.filter((one) => one.kind === kind && distance(one.at, at) < 20);
      expect(near, `${kind} ${id}`).toHaveLength(1);
    }
  });

  test("the module has its six pins where its lines leave it, in reading order", () => {
    const { sure, drawn } = looked;
    const module = sure.find(({ kind }) => kind === "module");
    const printed = drawn.find(({ kind }) => kind === "module");
    if (printed?.kind !== "module" || !module?.pins) throw new Error("no module");
    expect(module.pins.map(({ side }) => side)).toEqual(Array(6).fill("bottom"));
    module.pins.forEach(({ at }, n) => {
      const [dx, dy] = printed.pins[n]?.at ?? [0, 0];
      expect(distance(at, [printed.at[0] + dx, printed.at[1] + dy])).toBeLessThan(12);
    });
  });

  test("the plug's face, the notes and the title block hold nothing even likely", () => {
    const { proposals } = looked;
    const blocks: readonly Box[] = [
      { left: 610, top: 1630, right: 1110, bottom: 2080 },
      { left: 1180, top: 1800, right: 2230, bottom: 2120 },
      { left: 2220, top: 2080, right: 3420, bottom: 2400 },
    ];
    const within = proposals.filter(
      ({ at, confidence }) => confidence >= 0.5 && blocks.some((block) => boxContains(block, at)),
    );
    expect(within).toEqual([]);
  });
});

test("grain is refused with what to do, and not searched for minutes", () => {
  const random = seededRandom(SEED);
  const data = Uint8Array.from({ length: 220 * 220 }, () => random.below(2) * 255);
  const grain: Grey = { width: 220, height: 220, data };
  expect(() => found(grain)).toThrow("too much grain");
});
