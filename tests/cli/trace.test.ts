import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createCanvas } from "@napi-rs/canvas";
import { beforeAll, describe, expect, test } from "vitest";
import { distance, nearestOnSegment, type Point, seededRandom } from "../../src/base/index.ts";
import type { PrintedNet } from "../../src/cli/commands/trace.ts";
import { DIRECT_CURRENT } from "../scan/figures/direct-current.ts";
import type { Figure } from "../scan/figures/figure.ts";
import { type DrawnPage, drawPage } from "../support/drawn-pages/draw.ts";
import { type MadePage, makePage } from "../support/drawn-pages/lattice.ts";
import { randomStyle, type Style } from "../support/drawn-pages/style.ts";
import { withOrientation } from "../support/held-jpeg.ts";
import { canvasOf, sorted, testFolder, traced } from "../support/trace-call.ts";
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

const folder = testFolder();
let page: MadePage;
let drawn: DrawnPage;
let png = "";
let terminals = "";

beforeAll(async () => {
  const random = seededRandom(SEED);
  page = makePage(random, 24, 18);
  drawn = drawPage(random, page, { ...randomStyle(random), ...PLAIN }, 150);
  png = await folder.file("page.png", canvasOf(drawn.picture).toBuffer("image/png"));
  terminals = await folder.json("terminals.json", {
    terminals: drawn.terminals,
    parts: drawn.parts,
  });
});

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
    const upright = await traced(await folder.file("page.jpg", jpeg), "--terminals", terminals);
    expect(sorted(upright.nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
    const { width, height } = drawn.picture;
    const lying = createCanvas(height, width);
    const pen = lying.getContext("2d");
    pen.setTransform(0, -1, 1, 0, 0, width);
    pen.drawImage(canvasOf(drawn.picture), 0, 0);
    const held = withOrientation(lying.toBuffer("image/jpeg", 90), 6, false);
    const turned = await traced(await folder.file("held.jpg", held), "--terminals", terminals);
    expect(turned).toMatchObject({ width, height });
    expect(sorted(turned.nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
  });

  test("a part's box may be given by any two corners that lie across", async () => {
    const parts = drawn.parts.map(([left, top, right, bottom]) => [right, top, left, bottom]);
    const file = await folder.json("across.json", { terminals: drawn.terminals, parts });
    const { nets } = await traced(png, "--terminals", file);
    expect(sorted(nets.map((net) => net.terminals)), `seed ${SEED}`).toEqual(known());
  });

  test("a terminal with no line near is named, and a field that nobody knows", async () => {
    const lone: Point = [drawn.picture.width, drawn.picture.height];
    const file = await folder.json("lone.json", {
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
  const file = await folder.json("figure.json", { terminals, parts: Object.values(parts) });
  const { nets, unmatched } = await traced(FIGURE, "--terminals", file);
  expect(unmatched).toEqual([]);
  expect(sorted(nets.map((net) => net.terminals))).toEqual(sorted(BRIDGE.nets));
});
