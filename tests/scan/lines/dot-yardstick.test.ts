import { expect, test } from "vitest";
import { heldAgainstPage } from "../../../src/scan/lines/dot-yardstick.ts";
import type { Joint } from "../../../src/scan/lines/joint.ts";

const dot = (corners: number): Joint => ({ kind: "joined", corners });
const crossing = (corners: number): Joint => ({ kind: "crossing", pairs: [], corners });
const doubtful = (corners: number | null): Joint => ({
  kind: "doubtful",
  pairs: [],
  isLikelier: "crossing",
  corners,
});

/** What becomes of a doubtful place on a page with some dots and crossings. */
const held = (page: readonly Joint[], corners: number | null) =>
  heldAgainstPage(page)(doubtful(corners)).kind;

const FAINT_DOTS = [dot(0.5), dot(0.54), crossing(-0.02), crossing(0.02)];
const FULL_DOTS = [dot(0.95), dot(0.99), crossing(0.08), crossing(0.12)];

test("a place like the page's dots is one, and one like its crossings is none", () => {
  expect(held(FAINT_DOTS, 0.38)).toBe("joined");
  expect(held(FULL_DOTS, 0.38)).toBe("crossing");
});

test("halfway between them it stays a question", () => {
  expect(held(FAINT_DOTS, 0.26)).toBe("doubtful");
});

test("a page with hardly any of either tells nothing", () => {
  expect(held([dot(0.5), crossing(0), crossing(0)], 0.38)).toBe("doubtful");
  expect(held([dot(0.5), dot(0.5), crossing(0)], 0.38)).toBe("doubtful");
});

test("a line that jumps another is no yardstick for plain crossings", () => {
  expect(held([dot(0.9), dot(0.9), crossing(-0.6), crossing(-0.5)], 0.3)).toBe("doubtful");
});

test("a question of another kind is left alone", () => {
  expect(held(FAINT_DOTS, null)).toBe("doubtful");
});
