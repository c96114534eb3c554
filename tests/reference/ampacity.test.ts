import { describe, expect, test } from "vitest";
import {
  areaInMapping,
  bundleFactor,
  engineSpaceFactor,
  GAUGE_MAPPINGS,
  gaugeInMapping,
  gaugeName,
  gaugeNotThinner,
  INSULATIONS,
  MOST_FUSE_SHARE,
  tableAmps,
} from "../../src/standards/index.ts";
import { referenceRows } from "./rows.ts";

/** 33 CFR 183.425 table 5, written off by hand: gauge, then 60, 75, 80, 90, 105, 125, 200 °C. */
const PUBLISHED = [
  [18, 10, 10, 15, 20, 20, 25, 25],
  [16, 15, 15, 20, 25, 25, 30, 35],
  [14, 20, 20, 25, 30, 35, 40, 45],
  [12, 25, 25, 35, 40, 45, 50, 55],
  [10, 40, 40, 50, 55, 60, 70, 70],
  [8, 55, 65, 70, 70, 80, 90, 100],
  [6, 80, 95, 100, 100, 120, 125, 135],
  [4, 105, 125, 130, 135, 160, 170, 180],
  [3, 120, 145, 150, 155, 180, 195, 210],
  [2, 140, 170, 175, 180, 210, 225, 240],
  [1, 165, 195, 210, 210, 245, 265, 280],
  [0, 195, 230, 245, 245, 285, 305, 325],
  [-1, 225, 265, 285, 285, 330, 355, 370],
  [-2, 260, 310, 330, 330, 385, 410, 430],
  [-3, 300, 360, 385, 385, 445, 475, 510],
] as const;

describe("33 CFR 183.425 table 5", () => {
  test.each(PUBLISHED)("AWG %i", (awg, ...amps) => {
    expect(INSULATIONS.map((insulation) => tableAmps(awg, insulation))).toEqual(amps);
  });

  test("has no other gauges", () => {
    for (const awg of [20, 17, 13, 7, 5, -4]) expect(tableAmps(awg, 105)).toBeNull();
  });

  test("a thicker wire and hotter insulation never carry less", () => {
    PUBLISHED.forEach(([awg], row) => {
      INSULATIONS.forEach((insulation, column) => {
        const own = tableAmps(awg, insulation) ?? 0;
        const thicker = PUBLISHED[row + 1];
        const hotter = INSULATIONS[column + 1];
        if (thicker) expect(tableAmps(thicker[0], insulation)).toBeGreaterThan(own);
        if (hotter) expect(tableAmps(awg, hotter)).toBeGreaterThanOrEqual(own);
      });
    });
  });

  const rows = referenceRows("ampacity.csv") ?? [];
  test.skipIf(rows.length === 0)("is the reference folder's table too", () => {
    const gauge = (name: string) => (/^0+$/.test(name) ? 1 - name.length : Number(name));
    const theirs = rows.map((row) => [
      gauge(row.AWG ?? ""),
      ...INSULATIONS.map((insulation) => Number(row[`${insulation}C`])),
    ]);
    expect(theirs).toEqual(PUBLISHED);
  });
});

test("in an engine space a 105 °C wire keeps 0.85 of it", () => {
  // a public copy of the rule prints the corrected amps of the 105 °C column: 17 of 20, 51 of 60
  expect(20 * engineSpaceFactor(105)).toBeCloseTo(17, 9);
  expect(60 * engineSpaceFactor(105)).toBeCloseTo(51, 9);
  // US national code 310.15(B)(2)(a), 46 to 50 °C: 60, 75 and 90 °C
  expect([60, 75, 90].map((one) => engineSpaceFactor(one as 60))).toEqual([0.58, 0.75, 0.82]);
  // 80, 125 and 200 °C: from memory
  expect([80, 125, 200].map((one) => engineSpaceFactor(one as 80))).toEqual([0.78, 0.89, 1]);
});

test("in an engine space hotter insulation keeps more, about as the national code works it out", () => {
  const factors = INSULATIONS.map(engineSpaceFactor);
  expect(factors).toEqual(factors.toSorted((a, b) => a - b));
  // US national code, equation 310.15(B)(2): √((Tc − Ta') / (Tc − Ta)) with 50 °C in place of 30 °C
  for (const [index, rating] of INSULATIONS.slice(0, -1).entries()) {
    const worked = Math.sqrt((rating - 50) / (rating - 30));
    expect(Math.abs(worked - (factors[index] ?? 0)), `${rating} °C`).toBeLessThan(0.011);
  }
});

test("in a bundle the factors of note 2 count", () => {
  // US Coast Guard Electrical System Compliance Guideline, table F: 3 conductors 0.70, 4 to 6 0.60,
  // 7 to 24 0.50, 25 and more 0.40
  expect([1, 2, 3, 4, 6, 7, 24, 25].map(bundleFactor)).toEqual([
    1, 1, 0.7, 0.6, 0.6, 0.5, 0.5, 0.4,
  ]);
  // the amps of 105 °C boat cable (UL 1426) as a published table has them worked out, for 18, 14, 10
  // and 4/0 AWG: outside an engine space and inside
  const amps = (awg: number, count: number, inside: boolean) =>
    (tableAmps(awg, 105) ?? 0) * bundleFactor(count) * (inside ? engineSpaceFactor(105) : 1);
  const outside = [18, 14, 10, -3].flatMap((awg) => [3, 5, 20].map((n) => amps(awg, n, false)));
  const inside = [18, 14, 10, -3].flatMap((awg) => [3, 5, 20].map((n) => amps(awg, n, true)));
  const published = [14, 12, 10, 24.5, 21, 17.5, 42, 36, 30, 311.5, 267, 222.5];
  const publishedInside = [11.9, 10.2, 8.5, 20.8, 17.9, 14.9, 35.7, 30.6, 25.5, 264.8, 227, 189.1];
  for (const [index, one] of published.entries()) expect(outside[index]).toBeCloseTo(one, 6);
  for (const [index, one] of publishedInside.entries())
    expect(Math.abs((inside[index] ?? 0) - one)).toBeLessThan(0.06);
});

test("a fuse may have 150 % of the table's amps", () => {
  // 33 CFR 183.455(c)(1)
  expect(MOST_FUSE_SHARE).toBe(1.5);
});

describe("gauges and mm²", () => {
  test("SAE metric sizes and European drawings, as published", () => {
    // SAE metric sizes: 20 = 0.5, 18 = 0.8, 16 = 1, 14 = 2, 12 = 3, 10 = 5, 8 = 8
    const sae = [20, 18, 16, 14, 12, 10, 8].map((awg) => areaInMapping(awg, "sae"));
    expect(sae).toEqual([0.5, 0.8, 1, 2, 3, 5, 8]);
    // European drawings: 0.5 = 20, 0.75 = 18, 1 = 16, 1.5 = 14, 2.5 = 12, 4 = 10, 6 = 8
    const european = [0.5, 0.75, 1, 1.5, 2.5, 4, 6].map((mm2) => gaugeInMapping(mm2, "european"));
    expect(european).toEqual([20, 18, 16, 14, 12, 10, 8]);
  });

  test("a size that a mapping does not have is not made up", () => {
    expect(gaugeInMapping(1.5, "sae")).toBeNull();
    expect(gaugeInMapping(2, "european")).toBeNull();
    expect(areaInMapping(13, "sae")).toBeNull();
  });

  test("the next gauge that is not thinner is the one that each mapping has", () => {
    const gauges = Array.from({ length: 26 }, (_, index) => index - 3);
    const even = gauges.filter((awg) => awg <= 1 || awg % 2 === 0);
    for (const pairs of Object.values(GAUGE_MAPPINGS))
      for (const [awg, mm2] of pairs) expect([mm2, gaugeNotThinner(mm2, even)]).toEqual([mm2, awg]);
    expect(gaugeNotThinner(120, even)).toBeNull();
  });

  test("are written as the trade writes them", () => {
    expect([18, 1, 0, -1, -3].map(gaugeName)).toEqual(["18", "1", "1/0", "2/0", "4/0"]);
  });
});
