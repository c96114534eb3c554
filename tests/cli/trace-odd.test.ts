import { execFileSync } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { comparedWith, harmedPage } from "../support/drawn-pages/traced.ts";
import { canvasOf, paper, refused, sorted, testFolder, traced } from "../support/trace-call.ts";
import { call } from "./call.ts";

const folder = testFolder();

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
  const odd = await folder.file("odd.png", canvasOf({ width, height, data }).toBuffer("image/png"));
  const named = await folder.json("odd.json", { terminals: { a: [0, 0], b: [width, height] } });
  for (const answer of [await traced(odd), await traced(odd, "--terminals", named)]) {
    expect(answer).toMatchObject({ width, height });
    for (const at of answer.nets.flatMap(({ points, runs }) => [...points, ...runs.flat()])) {
      // the middle of a line lies on the picture
      expect(Math.max(-at[0], -at[1], at[0] - width, at[1] - height)).toBeLessThanOrEqual(0);
    }
  }
});

test("a blank page has no nets, and says so", async () => {
  const blank = await folder.file("blank.png", paper(60, 40, () => {}).toBuffer("image/png"));
  expect(await traced(blank)).toMatchObject({ nets: [], questions: [] });
  expect((await call("trace", blank)).out).toContain("No net was found.");
});

test.skipIf(process.platform === "win32")(
  "what comes through pipes is read to its end",
  async () => {
    const sheet = paper(300, 200, (pen) => pen.fillRect(20, 98, 260, 4)).toBuffer("image/png");
    const terminals = { a: [20, 100], b: [280, 100] };
    // More than one piece of a pipe.
    const text = `${JSON.stringify({ terminals })}${" ".repeat(200_000)}`;
    const [picture, named] = ["picture.pipe", "named.pipe"].map((name) =>
      join(folder.path(), name),
    );
    execFileSync("mkfifo", [picture as string, named as string]);
    const [answer] = await Promise.all([
      traced(picture as string, "--terminals", named as string),
      writeFile(picture as string, sheet),
      writeFile(named as string, text),
    ]);
    expect(answer.nets.map((net) => net.terminals)).toEqual([["a", "b"]]);
  },
);

test("light lines on dark: none is followed, and it says why and what to do", async () => {
  const print = paper(300, 200, (pen) => {
    pen.fillRect(0, 0, 300, 200);
    pen.fillStyle = "white";
    pen.fillRect(20, 98, 260, 4);
  });
  const { nets, notes } = await traced(await folder.file("print.png", print.toBuffer("image/png")));
  expect(nets).toEqual([]);
  expect(notes).toEqual([expect.stringMatching(/^Most of this picture is dark.* turn light and/)]);
  const blank = await folder.file("none.png", paper(60, 40, () => {}).toBuffer("image/png"));
  expect((await traced(blank)).notes).toEqual([]);
});

test("a picture too rough to tell its lines says so once, asks nothing and joins nothing wrongly", async () => {
  const { page, out, terminals, parts } = await harmedPage(7002, 1, [150], [36, 26]);
  const rough = await folder.file("rough.png", canvasOf(out.picture).toBuffer("image/png"));
  const boxes = parts.map(({ left, top, right, bottom }) => [left, top, right, bottom]);
  const named = await folder.json("rough.json", { terminals, parts: boxes });
  const { nets, notes, questions } = await traced(rough, "--terminals", named);
  expect(notes).toEqual([expect.stringMatching(/too rough to tell its lines.*300 dpi/)]);
  expect(questions).toEqual([]);
  const said = nets.map((net) => net.terminals);
  expect(comparedWith(page, said, questions.length)).toMatchObject({ wrong: 0 });
}, 20_000);

/** Two lines, one of them with a gap of so many pixels in it. */
const brokenLine = (gap: number) => {
  const canvas = paper(500, 120, (pen) => {
    pen.fillRect(40, 30, 420, 4);
    pen.fillRect(40, 80, 200, 4);
    pen.fillRect(240 + gap, 80, 220 - gap, 4);
  });
  return folder.file("broken.png", canvas.toBuffer("image/png"));
};

test("a doubtful place is asked about, joined by nobody, and settled by an answer in the file", async () => {
  const names = { left: [42, 82], right: [458, 82] } as const;
  const ask = await folder.json("ask.json", { terminals: names });
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
  const without = await folder.json("stray.json", { terminals: names, answers: stray });
  const left = await traced(await brokenLine(gap), "--terminals", without);
  expect(left.nets.map(({ terminals }) => terminals)).toEqual([["left"]]);
  expect(left.unmatched).toEqual(["right"]);

  for (const joined of [true, false]) {
    const answers = [{ at: question?.at, joined }];
    const told = await folder.json("told.json", { terminals: names, answers });
    const { nets, questions } = await traced(await brokenLine(gap), "--terminals", told);
    expect(questions).toEqual([]);
    expect(sorted(nets.map((net) => net.terminals))).toEqual(
      joined ? ["left right"] : ["left", "right"],
    );
  }
});

describe("paper with a printed grid as fine as millimetre paper, and a line above it", () => {
  const [width, height, top] = [2100, 2200, 100];
  let grid = "";
  beforeAll(async () => {
    const sheet = paper(width, height, (pen) => {
      pen.fillRect(50, 40, 1500, 4);
      for (let x = 6; x < width; x += 9) pen.fillRect(x, top, 4, height);
      for (let y = top; y < height; y += 9) pen.fillRect(0, y, width, 4);
    });
    grid = await folder.file("grid.png", sheet.toBuffer("image/png"));
  });

  test("it is refused with what to do, and not followed for minutes", async () => {
    const said = await refused(grid);
    expect(said).toContain("grid.png: There are more lines on this picture than can be followed");
    expect(said).toMatch(/crop it to the diagram, or clean it of grain/);
  });

  test("the line is followed where a box holds the grid", async () => {
    const file = await folder.json("boxes.json", {
      terminals: { a: [50, 42], b: [1550, 42] },
      parts: [[0, top, width, height]],
    });
    const { nets } = await traced(grid, "--terminals", file);
    expect(nets.map((net) => [...net.terminals].sort())).toEqual([["a", "b"]]);
  });
});
