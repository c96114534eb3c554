import { describe, expect, test } from "vitest";
import { jointAt } from "../../../src/scan/lines/joint.ts";
import { skeletonOf } from "../../../src/scan/lines/skeleton.ts";
import { solidInk } from "../../../src/scan/lines/solid-ink.ts";
import { waysOf } from "../../../src/scan/lines/ways.ts";
import { zonesOf } from "../../../src/scan/lines/zones.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { pageFromText, times } from "../../support/drawn-pages/text-page.ts";

const LINE = 3;
const SIZE = 51;

/** What lines do at the place of a drawing where most of them meet, each of them there so many times. */
function joint(drawing: readonly string[], alike = 1) {
  const page = pageFromText(drawing, LINE);
  const skeleton = finished(skeletonOf(page.thinned));
  const [zone] = finished(zonesOf(page, skeleton, new Set())).sort(
    (a, b) => b.branches.length - a.branches.length,
  );
  if (!zone) throw new Error("no lines meet");
  const found = jointAt(
    page,
    finished(solidInk(page, skeleton, [zone])),
    skeleton,
    { ...zone, branches: Array.from({ length: alike }, () => zone.branches).flat() },
    new Map(),
    waysOf(skeleton, []),
  );
  // Which way each line leaves: to the left, the right, up or down.
  const sideOf = ({ stretch }: { readonly stretch: number }) => {
    const { pixels } = skeleton.stretches[stretch] as { pixels: Int32Array };
    const at = pixels[pixels.length >> 1] as number;
    const [dx, dy] = [(at % SIZE) - zone.at[0], Math.floor(at / SIZE) - zone.at[1]];
    if (Math.abs(dx) > Math.abs(dy)) return dx < 0 ? "left" : "right";
    return dy < 0 ? "up" : "down";
  };
  const pairs = found.kind === "joined" ? [] : found.pairs;
  return {
    kind: found.kind,
    isLikelier: found.kind === "doubtful" ? found.isLikelier : null,
    pairs: pairs.map((pair) => pair.map(sideOf).sort().join("-")).sort(),
  };
}

/** A line of the drawing with so much ink in its middle. */
const middle = (ink: string) => {
  const left = Math.floor((SIZE - ink.length) / 2);
  return " ".repeat(left) + ink + " ".repeat(SIZE - left - ink.length);
};
const BLANK = middle("");
const UP = middle("###");
const ALONG = middle("#".repeat(47));

/** A crossing with the lines of `blob` in its middle: odd in number, three of them the line across. */
function crossing(blob: readonly string[]) {
  const high = (blob.length - 3) / 2;
  const rows = blob.map(middle);
  const across = times(3, ALONG);
  return [
    ...times(2, BLANK),
    ...times(22 - high, UP),
    ...rows.slice(0, high),
    ...across,
    ...rows.slice(high + 3),
    ...times(22 - high, UP),
    ...times(2, BLANK),
  ];
}

const PLAIN = crossing(["###", "###", "###"]);
/** Ink that ran, or a dot that was printed small. */
const SMALL = crossing([" +###+ ", "+#####+", "", "", "", "+#####+", " +###+ "]);
/** Eleven pixels across, nearly four lines. */
const DOT = crossing([
  "#####",
  "#######",
  "#########",
  "###########",
  "",
  "",
  "",
  "###########",
  "#########",
  "#######",
  "#####",
]);

describe("what lines do where they meet", () => {
  test("plain lines that cross go straight through one another", () => {
    expect(joint(PLAIN)).toEqual({
      kind: "crossing",
      isLikelier: null,
      pairs: ["down-up", "left-right"],
    });
  });

  test("a dot joins all", () => {
    expect(joint(DOT).kind).toBe("joined");
  });

  test("a blob that may be a dot is asked, and nothing is joined across it", () => {
    expect(joint(SMALL)).toMatchObject({ kind: "doubtful", pairs: ["down-up", "left-right"] });
  });

  test("a T is one", () => {
    const drawing = [...times(24, BLANK), ...times(3, ALONG), ...times(22, UP), ...times(2, BLANK)];
    expect(joint(drawing).kind).toBe("joined");
  });

  test("a smear on a line is asked, and the line goes on", () => {
    const smear = middle("+++");
    const drawing = [
      ...times(6, BLANK),
      ...times(18, smear),
      ...times(3, ALONG),
      ...times(24, BLANK),
    ];
    expect(joint(drawing)).toEqual({
      kind: "doubtful",
      isLikelier: "crossing",
      pairs: ["left-right"],
    });
  });

  test("a line runs on through a letter that stands on it, and the letter is no line", () => {
    const drawing = [
      ...times(14, BLANK),
      ...times(10, middle("##   ##")),
      ...times(3, ALONG),
      ...times(24, BLANK),
    ];
    expect(joint(drawing)).toMatchObject({ kind: "crossing", pairs: ["left-right"] });
  });

  test("where more lines meet than anyone draws it is asked, and none is held against every other", () => {
    const dot = crossing(times(11, "###########"));
    expect(joint(dot, 16)).toEqual({ kind: "joined", isLikelier: null, pairs: [] });
    expect(joint(dot, 17)).toEqual({ kind: "doubtful", isLikelier: "joined", pairs: [] });
  });
});
