import { describe, expect, test, vi } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import { cavityFacts } from "../../../src/editor/boards/plug/cavity-facts.ts";
import { layOutFace, type PlacedCavity } from "../../../src/editor/boards/plug/cavity-layout.ts";
import { spacingOf, viewFrom } from "../../../src/plug/index.ts";
import { analysisOf } from "../../../src/session/index.ts";
import { sweeper } from "../support/sweeper.ts";

/** Letters of IBM Plex Sans are about this wide, parts of their height; jsdom measures none. */
const LETTER = 0.62;
vi.mock("../../../src/editor/boards/plug/use-fonts.ts", () => ({
  textWidth: (text: string, size: number) => text.length * size * 0.62,
}));

type Box = [left: number, top: number, right: number, bottom: number];
const meet = (a: Box, b: Box) => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
/** A disc is given as the box around it. */
const onDisc = (disc: Box, word: Box) => {
  const [x, y] = [(disc[0] + disc[2]) / 2, (disc[1] + disc[3]) / 2];
  const nearest = [
    Math.max(word[0], Math.min(word[2], x)),
    Math.max(word[1], Math.min(word[3], y)),
  ] as const;
  return Math.hypot(nearest[0] - x, nearest[1] - y) < (disc[2] - disc[0]) / 2;
};

/** Every cavity wired, tied and judged: the fullest a face can be. */
function fullFace(points: readonly Point[], scale: number): readonly PlacedCavity[] {
  const job = sweeper();
  const view = viewFrom({ ...job.plugs[0], side: "mating" } as never, "mating");
  const [facts] = cavityFacts(
    job,
    job.machines[0]?.id ?? "",
    "X1",
    view,
    analysisOf(job, ""),
    null,
  );
  if (!facts) throw new Error("no cavity");
  return points.map(([x, y], index) => ({
    facts: {
      ...facts,
      mark: String(index + 1),
      colour: { base: "RD", tracer: "WH" },
      colourFrom: "machine",
      pin: `A1:${index + 1}`,
      verdict: "contradicted",
    },
    at: [x * scale, y * scale],
  }));
}

const grid = (columns: number, rows: number): Point[] =>
  Array.from({ length: columns * rows }, (_, n) => [n % columns, Math.floor(n / columns)]);
const zigzag: Point[] = Array.from({ length: 9 }, (_, n) => [n / 2, n % 2 === 0 ? 0 : 0.87]);
const ring: Point[] = [
  [0, 0],
  ...Array.from({ length: 6 }, (_, n): Point => {
    const turn = (n * Math.PI) / 3;
    return [Math.cos(turn), Math.sin(turn)];
  }),
];

const FACES: [string, Point[]][] = [
  ["rows and columns", grid(4, 2)],
  ["rows in zigzag", zigzag],
  ["a ring round a middle", ring],
];

describe.each(FACES)("on a face of %s", (_name, points) => {
  test.each([44, 60, 80, 110, 160])(
    "no word lies on an opening, a verdict or another word, %i pixels apart",
    (scale) => {
      const placed = fullFace(points, scale);
      const layouts = layOutFace(placed, scale);
      const things: { what: string; box: Box; index: number }[] = [];
      for (const [index, layout] of layouts.entries()) {
        const [x, y] = placed[index]?.at ?? [0, 0];
        const r = layout.radius;
        things.push({ what: "opening", index, box: [x - r, y - r, x + r, y + r] });
        const [bx, by] = [x + layout.badgeAt[0], y + layout.badgeAt[1]];
        const b = layout.badge;
        things.push({ what: "verdict", index, box: [bx - b, by - b, bx + b, by + b] });
        for (const label of [layout.code, layout.pin]) {
          if (!label) continue;
          const width = label.text.length * label.size * LETTER;
          const [left, top] = [x + label.x, y + label.y];
          things.push({
            what: label.text,
            index,
            // Letters fill the middle eight tenths of their line.
            box: [left, top + label.size * 0.1, left + width, top + label.size * 0.9],
          });
          expect(label.size).toBeGreaterThanOrEqual(14);
        }
      }
      const words = things.filter(({ what }) => what !== "opening" && what !== "verdict");
      for (const word of words) {
        const met = things.filter(
          (other) =>
            other !== word &&
            (words.includes(other) ? meet(word.box, other.box) : onDisc(other.box, word.box)),
        );
        expect(met.map(({ what, index }) => `${word.what} on ${what} of ${index + 1}`)).toEqual([]);
      }
    },
  );

  test("from 80 pixels apart every colour carries its code", () => {
    const layouts = layOutFace(fullFace(points, 80), 80);
    expect(layouts.map((layout) => layout.code?.text)).toEqual(points.map(() => "RDWH"));
  });
});

test("the demo's face keeps every code", () => {
  const job = sweeper();
  const [plug] = job.plugs;
  if (!plug) throw new Error("no plug");
  const machine = job.machines[0]?.id ?? "";
  const view = viewFrom(plug, "mating");
  const facts = cavityFacts(job, machine, plug.id, view, analysisOf(job, machine), null);
  const scale = 80 / spacingOf(plug.cavities);
  const placed = facts.map((one) => ({
    facts: one,
    at: [one.at[0] * scale, one.at[1] * scale] as Point,
  }));
  const codes = layOutFace(placed, 80).filter((layout) => layout.code);
  expect(codes).toHaveLength(facts.filter((one) => one.colour).length);
});
