import { expect, test } from "vitest";
import { bowIn, type ProposedCorners } from "../../../src/scan/index.ts";
import { isWorthSquaring } from "../../../src/session/scan/index.ts";

const SIZE = { width: 1600, height: 1200 };
const box = (left: number, top: number, right: number, bottom: number): ProposedCorners => ({
  corners: [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ],
  of: "page",
  confidence: 0.95,
  bow: null,
  cutOff: [],
});

test("a page that lies askew on a table is worth a question", () => {
  const askew = {
    ...box(100, 100, 1500, 1100),
    corners: [
      [150, 80],
      [1500, 120],
      [1480, 1100],
      [90, 1050],
    ],
  };
  expect(isWorthSquaring(askew as unknown as ProposedCorners, SIZE)).toBe(true);
  const cut = { ...askew, cutOff: ["left"] };
  expect(isWorthSquaring(cut as unknown as ProposedCorners, SIZE)).toBe(false);
});

test("a page with a table around it is, straight as it may lie", () => {
  expect(isWorthSquaring(box(100, 100, 1500, 1100), SIZE)).toBe(true);
});

test("corners that are the picture's own are not, nor unsure ones", () => {
  expect(isWorthSquaring(box(4, 6, 1590, 1195), SIZE)).toBe(false);
  expect(isWorthSquaring({ ...box(100, 100, 1500, 1100), confidence: 0.7 }, SIZE)).toBe(false);
});

test("a frame that is level on its page is not, one askew or bowed is", () => {
  const frame = { ...box(80, 80, 1520, 1120), of: "frame" } as const;
  expect(isWorthSquaring(frame, SIZE)).toBe(false);
  expect(isWorthSquaring({ ...frame, bow: bowIn(1600, 1200, -0.03) }, SIZE)).toBe(true);
  const [a, b, c, d] = frame.corners;
  expect(isWorthSquaring({ ...frame, corners: [[a[0], a[1] + 20], b, c, d] }, SIZE)).toBe(true);
});
