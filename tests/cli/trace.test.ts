import { existsSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createCanvas, ImageData } from "@napi-rs/canvas";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { distance, nearestOnSegment, type Point, seededRandom } from "../../src/base/index.ts";
import type { PrintedNet, TraceAnswer } from "../../src/cli/commands/trace.ts";
import type { Rgba } from "../../src/scan/index.ts";
import { DIRECT_CURRENT } from "../scan/figures/direct-current.ts";
import type { Figure } from "../scan/figures/figure.ts";
import { type DrawnPage, drawPage } from "../support/drawn-pages/draw.ts";
import { type MadePage, makePage } from "../support/drawn-pages/lattice.ts";
import { randomStyle, type Style } from "../support/drawn-pages/style.ts";
import { withOrientation } from "../support/held-jpeg.ts";
import { call } from "./call.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
/** Plain to follow: how well lines are followed is tested elsewhere. */
const PLAIN: Partial<Style> = {
  pitch: 4,
  line: 0.35,
  dot: 4,
  dotsAtTs: true,
  jumps: false,
  rounding: 0,
  words: false,
  wordsOnLines: false,
  thick: 1,
  inks: ["black"],
};

let folder = "";
let page: MadePage;
let drawn: DrawnPage;
let png = "";
let terminals = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pintruth-trace-"));
  const random = seededRandom(SEED);
  page = makePage(random, 24, 18);
  drawn = drawPage(random, page, { ...randomStyle(random), ...PLAIN }, 150);
  png = await fileOf("page.png", canvasOf(drawn.picture).toBuffer("image/png"));
  terminals = await jsonOf("terminals.json", { terminals: drawn.terminals, parts: drawn.parts });
});
afterAll(() => rm(folder, { recursive: true }));

async function fileOf(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}
const jsonOf = (name: string, content: unknown) => fileOf(name, JSON.stringify(content));

function canvasOf({ width, height, data }: Rgba) {
  const canvas = createCanvas(width, height);
  const copy = data.slice() as Uint8ClampedArray<ArrayBuffer>;
  canvas.getContext("2d").putImageData(new ImageData(copy, width, height), 0, 0);
  return canvas;
}

async function traced(...argv: string[]): Promise<TraceAnswer> {
  const { status, out, err } = await call("trace", "--json", ...argv);
  expect([status, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

const sorted = (lists: readonly (readonly string[])[]) =>
  lists.map((names) => [...names].sort().join(" ")).sort();
const known = () => sorted(page.nets.map((net) => net.terminals.map(({ name }) => name)));

/** The lines of the net with these names as they were drawn. */
function drawnSteps(names: readonly string[]): readonly (readonly [Point, Point])[] {
  const net = page.nets.find((one) => one.terminals.some(({ name }) => names.includes(name)));
  const place = ([x, y]: Point): Point => [
    drawn.origin[0] + x * drawn.pitch,
    drawn.origin[1] + y * drawn.pitch,
  ];
  return (net?.steps ?? []).map(([a, b]) => [place(a), place(b)]);
}

const far = (at: Point, steps: readonly (readonly [Point, Point])[]) =>
  Math.min(...steps.map(([a, b]) => distance(at, nearestOnSegment(at, a, b))));

/** Points every few pixels along a line. */
const along = (points: readonly Point[]): Point[] =>
  points.slice(1).flatMap((to, n) => {
    const from = points[n] as Point;
    const count = Math.ceil(distance(from, to) / 5);
    return Array.from({ length: count + 1 }, (_, k): Point => {
      const share = count === 0 ? 0 : k / count;
      return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    });
  });
const piecesOf = (points: readonly Point[]) =>
  points.slice(1).map((to, n) => [points[n] as Point, to] as const);

/** Within a line's width or two, and the dots that lines end at. */
const NEAR = 5;

describe("a drawn page with its terminals and parts", () => {
  test("as PNG: the nets that were drawn, no question, nothing unmatched", async () => {
    const answer = await traced(png, "--terminals", terminals);
    expect(sorted(answer.nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
    const { width, height } = drawn.picture;
    expect(answer).toMatchObject({
      file: png,
      width,
      height,
      questions: [],
      unmatched: [],
      notes: [],
    });
    expect(Object.keys(answer.nets[0] as PrintedNet)).toEqual([
      "id",
      "points",
      "runs",
      "terminals",
    ]);
    expect(new Set(answer.nets.map(({ id }) => id)).size).toBe(answer.nets.length);
  });

  test("points is one walk that keeps to the net's lines and leaves out none", async () => {
    const { nets } = await traced(png, "--terminals", terminals);
    for (const { points, runs, terminals: names } of nets) {
      const steps = drawnSteps(names);
      for (const at of along(points)) expect(far(at, steps), names.join()).toBeLessThan(NEAR);
      const pieces = piecesOf(points);
      for (const at of steps.flat()) expect(far(at, pieces), names.join()).toBeLessThan(NEAR);
      for (const at of runs.flat()) expect(far(at, pieces), names.join()).toBeLessThan(0.01);
      const ends = names.map((name) => drawn.terminals[name] as Point);
      expect(Math.min(...ends.map((at) => distance(at, points[0] as Point)))).toBeLessThan(NEAR);
    }
  });

  test("as JPEG, and as one that was taken on its side", async () => {
    const jpeg = canvasOf(drawn.picture).toBuffer("image/jpeg", 80);
    const upright = await traced(await fileOf("page.jpg", jpeg), "--terminals", terminals);
    expect(sorted(upright.nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
    const { width, height } = drawn.picture;
    const lying = createCanvas(height, width);
    const pen = lying.getContext("2d");
    pen.setTransform(0, -1, 1, 0, 0, width);
    pen.drawImage(canvasOf(drawn.picture), 0, 0);
    const held = withOrientation(lying.toBuffer("image/jpeg", 90), 6, false);
    const turned = await traced(await fileOf("held.jpg", held), "--terminals", terminals);
    expect(turned).toMatchObject({ width, height });
    expect(sorted(turned.nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
  });

  test("a part's box may be given by any two corners that lie across", async () => {
    const parts = drawn.parts.map(([left, top, right, bottom]) => [right, top, left, bottom]);
    const file = await jsonOf("across.json", { terminals: drawn.terminals, parts });
    const { nets } = await traced(png, "--terminals", file);
    expect(sorted(nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
  });

  test("a terminal with no line near is named, and a field that nobody knows", async () => {
    const lone: Point = [drawn.picture.width, drawn.picture.height];
    const file = await jsonOf("lone.json", {
      terminals: { ...drawn.terminals, "lone\u001b[2J": lone },
      parts: drawn.parts,
      wires: [],
    });
    const answer = await traced(png, "--terminals", file);
    expect(answer.unmatched).toEqual(["lone\u001b[2J"]);
    expect(answer.notes).toEqual([expect.stringContaining('"wires"')]);
    const { out } = await call("trace", png, "--terminals", file);
    expect(out).toContain("Terminals that no line was found near\n    lone\ufffd[2J\n");
    expect(out).toContain('"wires"');
    expect(out).not.toContain("\u001b");
  });

  test("without terminals every long line is listed", async () => {
    const { nets, unmatched } = await traced(png);
    expect(unmatched).toEqual([]);
    for (const { steps } of page.nets.filter((net) => net.steps.length > 8)) {
      const [[x, y]] = steps[steps.length >> 1] as (typeof steps)[0];
      const at: Point = [drawn.origin[0] + x * drawn.pitch, drawn.origin[1] + y * drawn.pitch];
      const near = nets.filter(({ points }) => far(at, piecesOf(points)) < NEAR);
      expect(near.length, `seed ${SEED}, ${at}`).toBeGreaterThan(0);
    }
    for (const net of nets) expect(net.terminals).toEqual([]);
  });

  test("for people: a line for each net", async () => {
    const { status, out } = await call("trace", png, "--terminals", terminals);
    expect(status).toBe(0);
    expect(out).toContain(`page.png: ${page.nets.length} nets on ${drawn.picture.width} by`);
    const [net] = page.nets;
    const names = net?.terminals.map(({ name }) => name) ?? [];
    const line = out.split("\n").find((one) => one.includes(names[0] as string));
    for (const name of names) expect(line).toContain(name);
  });
});

test.each<[string, number, number, (x: number, y: number) => boolean]>([
  ["one pixel of paper", 1, 1, () => false],
  ["one pixel of ink", 1, 1, () => true],
  ["a row", 400, 1, (x) => x % 7 < 3],
  ["a column", 1, 400, (_, y) => y % 7 < 3],
  ["ink all over", 120, 90, () => true],
  ["a chessboard", 120, 90, (x, y) => (x + y) % 2 === 0],
  ["stripes without paper to speak of", 120, 90, (_, y) => y % 4 !== 0],
  ["noise", 120, 90, (x, y) => ((x * 7919 + y * 104_729) ^ (x * y)) % 3 === 0],
])("odd pictures are answered: %s", async (_, width, height, isInk) => {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at += 4) if (isInk(x, y)) data.fill(0, at, at + 3);
  }
  const odd = await fileOf("odd.png", canvasOf({ width, height, data }).toBuffer("image/png"));
  const named = await jsonOf("odd.json", { terminals: { a: [0, 0], b: [width, height] } });
  for (const answer of [await traced(odd), await traced(odd, "--terminals", named)]) {
    expect(answer).toMatchObject({ width, height });
    for (const at of answer.nets.flatMap(({ points, runs }) => [...points, ...runs.flat()])) {
      // the middle of a line lies on the picture
      expect(Math.max(-at[0], -at[1], at[0] - width, at[1] - height)).toBeLessThanOrEqual(1);
    }
  }
});

test("a blank page has no nets, and says so", async () => {
  const canvas = createCanvas(60, 40);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, 60, 40);
  const blank = await fileOf("blank.png", canvas.toBuffer("image/png"));
  expect(await traced(blank)).toMatchObject({ nets: [], questions: [] });
  expect((await call("trace", blank)).out).toContain("No net was found.");
});

/** Two lines, one of them with a gap of so many pixels in it. */
async function brokenLine(gap: number): Promise<string> {
  const canvas = createCanvas(500, 120);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, 500, 120);
  pen.fillStyle = "black";
  pen.fillRect(40, 30, 420, 4);
  pen.fillRect(40, 80, 200, 4);
  pen.fillRect(240 + gap, 80, 220 - gap, 4);
  return fileOf("broken.png", canvas.toBuffer("image/png"));
}

test("a doubtful place is asked about, joined by nobody, and settled by an answer in the file", async () => {
  const names = { left: [42, 82], right: [458, 82] } as const;
  const ask = await jsonOf("ask.json", { terminals: names });
  let gap = 2;
  let doubtful = await traced(await brokenLine(gap), "--terminals", ask);
  expect(doubtful.nets.map((net) => net.terminals)).toEqual([["left", "right"]]);
  while (doubtful.questions.length === 0 && gap < 60) {
    gap += 2;
    doubtful = await traced(await brokenLine(gap), "--terminals", ask);
  }
  const [question] = doubtful.questions;
  expect(question).toMatchObject({ kind: "gap", at: [expect.any(Number), expect.any(Number)] });
  expect(sorted(doubtful.nets.map((net) => net.terminals))).toEqual(["left", "right"]);
  expect([...(question?.nets ?? [])].sort()).toEqual(doubtful.nets.map(({ id }) => id).sort());
  const text = await call("trace", await brokenLine(gap), "--terminals", ask);
  expect(text.out).toContain("Doubtful places, where nothing was joined\n  ? a gap or a break at");

  // A piece that is said to be no line is none; the terminal at it is left without.
  const stray = [{ at: [400, 82], joined: false, stray: true }];
  const without = await jsonOf("stray.json", { terminals: names, answers: stray });
  const left = await traced(await brokenLine(gap), "--terminals", without);
  expect(left.nets.map(({ terminals }) => terminals)).toEqual([["left"]]);
  expect(left.unmatched).toEqual(["right"]);

  for (const joined of [true, false]) {
    const answers = [{ at: question?.at, joined }];
    const told = await jsonOf("told.json", { terminals: names, answers });
    const { nets, questions } = await traced(await brokenLine(gap), "--terminals", told);
    expect(questions).toEqual([]);
    expect(sorted(nets.map((net) => net.terminals))).toEqual(
      joined ? ["left right"] : ["left", "right"],
    );
  }
});

describe("what cannot be traced: 2, one line that says where, and nothing on stdout", () => {
  const refused = async (...argv: string[]) => {
    const { status, out, err } = await call("trace", "--json", ...argv);
    expect([status, out], argv.join(" ")).toEqual([2, ""]);
    expect(err, argv.join(" ")).toMatch(/^pintruth: [^\n]+\n$/);
    return err;
  };

  test("calls", async () => {
    expect(await refused()).toContain("trace needs a picture: write pintruth trace IMAGE");
    expect(await refused(png, png)).toContain("trace takes one picture and not 2");
    expect(await refused(png, "--machine", "M")).toContain("trace has no option --machine");
    expect(await refused(png, "--terminals")).toContain("--terminals needs a value");
  });

  test("pictures", async () => {
    expect(await refused(join(folder, "nowhere.png"))).toContain(
      "nowhere.png: there is no such file",
    );
    expect(await refused(folder)).toContain("it is a folder");
    const job = await refused("sample-data/sweeper/job.json");
    expect(job).toContain('"job.json" is not a PNG, JPEG or WebP picture');
    const webp = await fileOf("page.webp", canvasOf(drawn.picture).toBuffer("image/webp"));
    expect(await refused(webp)).toContain("page.webp: a WebP picture is not read here: save it as");
    const half = canvasOf(drawn.picture).toBuffer("image/png").subarray(0, 3000);
    expect(await refused(await fileOf("half.png", half))).toContain("the picture is damaged");
  });

  test.each([
    ["no JSON", "{", "the file is not JSON"],
    ["a list", "[]", "the file holds no terminals"],
    ["no terminals", "{}", "terminals: that cannot stand there"],
    [
      "a place of one number",
      '{"terminals":{"A:1":[1]}}',
      'terminals["A:1"]: that cannot stand there',
    ],
    ["words for a place", '{"terminals":{"A":[1,"2"]}}', "terminals.A[1]: that cannot stand there"],
    ["a place beyond all numbers", '{"terminals":{"A":[1,1e999]}}', "terminals.A[1]: that cannot"],
    ["a box of three", '{"terminals":{},"parts":[[0,0,9,9],[1,2,3]]}', "parts[1]"],
    ["an answer without a word", '{"terminals":{},"answers":[{"at":[1,2]}]}', "answers[0].joined"],
    [
      "a terminal off the picture",
      '{"terminals":{"A":[-1,5]}}',
      "terminals.A: the terminal lies outside",
    ],
    [
      "a part off the picture",
      '{"terminals":{},"parts":[[0,90000,9,90009]]}',
      "parts[0]: the box lies",
    ],
    [
      "an answer off the picture",
      '{"terminals":{},"answers":[{"at":[3,3],"joined":true},{"at":[3,90000],"joined":false}]}',
      "answers[1].at: the answer lies outside of the picture of",
    ],
    [
      "a terminal named twice",
      '{"terminals":{"S1:1":[9,9],"S1:2":[9,9],"S1:\\u0031":[8,8]}}',
      'terminals["S1:1"]: the file says that twice: keep one, or give each its own name',
    ],
    [
      "an answer that says two things",
      '{"terminals":{"a:\\"}":[1,2]},"answers":[{"at":[1,2],"joined":true},{"at":[3,3],"joined":true,"joined":false}]}',
      "answers[1].joined: the file says that twice",
    ],
    [
      "two lists of terminals",
      '{"terminals":{},"terminals":{"A":[1,2]}}',
      "terminals: the file says",
    ],
    [
      "a name without end",
      JSON.stringify({ terminals: { ["x".repeat(100_000)]: [1, 2] } }),
      `terminals: the name "${"x".repeat(20)}..." has more than 200 letters`,
    ],
    ["a name that reaches a prototype", '{"terminals":{"__proto__":[1,2]}}', "rename it"],
  ])("terminals files: %s", async (_, text, said) => {
    const file = await fileOf("bad.json", text);
    const err = await refused(png, "--terminals", file);
    expect(err).toContain(`${file}: `);
    expect(err).toContain(said);
  });

  test("a terminals file that is not there", async () => {
    expect(await refused(png, "--terminals", join(folder, "no.json"))).toContain("no such file");
  });
});

test("a terminals file that an editor marked as UTF-8 is read", async () => {
  const file = await fileOf("marked.json", '\ufeff{"terminals":{"a":[9,9]}}');
  expect((await traced(png, "--terminals", file)).unmatched).toEqual(["a"]);
});

test("names that only look alike are different terminals", async () => {
  const text = `{"terminals":{"a":[9,9],"A":[9,9],"a ":[9,9],"a\\"":[9,9],"terminals":[9,9],"at":[9,9]},
    "answers":[{"at":[1,2],"joined":true},{"at":[3,3],"joined":true}]}`;
  const file = await fileOf("alike.json", text);
  expect((await traced(png, "--terminals", file)).unmatched).toHaveLength(6);
});

test("help names the command, and the command's own help its option", async () => {
  expect((await call("--help")).out).toContain("pintruth trace IMAGE [--terminals FILE]");
  expect((await call("trace", "--help")).out).toContain("--terminals FILE");
});

/** A figure of T. R. Kuphaldt, "Lessons in Electric Circuits" (Design Science License), not kept here. */
const BRIDGE = DIRECT_CURRENT.find(({ file }) => file === "DC_00392.png") as Figure;
const FIGURE = fileURLToPath(new URL(`../../../shared/figures/${BRIDGE.file}`, import.meta.url));
const isThere = existsSync(FIGURE);
if (!isThere) console.warn(`Skipped: the book's figure is not at ${FIGURE}.`);

test.skipIf(!isThere)("an unbalanced bridge out of a book: its four numbered nets", async () => {
  const { terminals, parts } = BRIDGE;
  const file = await jsonOf("figure.json", { terminals, parts: Object.values(parts) });
  const { nets, unmatched } = await traced(FIGURE, "--terminals", file);
  expect(unmatched).toEqual([]);
  expect(sorted(nets.map((net) => net.terminals))).toEqual(sorted(BRIDGE.nets));
});
