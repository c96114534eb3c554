/**
 * Amps that an insulated, stranded copper conductor may carry, other than in short surges:
 * 33 CFR 183.425, table 5 (US public domain), for boats under 50 V, at 30 °C around it. No rule
 * binds other machines to it, but it is published whole and free for anybody to check: every column
 * was read against the code's text as two public copies of it print it.
 */

/** What the insulation stands, °C, as the columns of the table have it. */
export const INSULATIONS = [60, 75, 80, 90, 105, 125, 200] as const;
export type Insulation = (typeof INSULATIONS)[number];

/** Gauge (0, -1, -2, -3 stand for 1/0, 2/0, 3/0, 4/0) and amps in the order of `INSULATIONS`. */
export const CFR_183_425_TABLE_5: readonly (readonly [awg: number, amps: readonly number[]])[] = [
  [18, [10, 10, 15, 20, 20, 25, 25]],
  [16, [15, 15, 20, 25, 25, 30, 35]],
  [14, [20, 20, 25, 30, 35, 40, 45]],
  [12, [25, 25, 35, 40, 45, 50, 55]],
  [10, [40, 40, 50, 55, 60, 70, 70]],
  [8, [55, 65, 70, 70, 80, 90, 100]],
  [6, [80, 95, 100, 100, 120, 125, 135]],
  [4, [105, 125, 130, 135, 160, 170, 180]],
  [3, [120, 145, 150, 155, 180, 195, 210]],
  [2, [140, 170, 175, 180, 210, 225, 240]],
  [1, [165, 195, 210, 210, 245, 265, 280]],
  [0, [195, 230, 245, 245, 285, 305, 325]],
  [-1, [225, 265, 285, 285, 330, 355, 370]],
  [-2, [260, 310, 330, 330, 385, 410, 430]],
  [-3, [300, 360, 385, 385, 445, 475, 510]],
];

/**
 * Factors in an engine space (50 °C), note 1 of the table, in the order of `INSULATIONS`. That of
 * 105 °C is printed in a public copy of the rule; those of 60, 75 and 90 °C are the same as in a
 * public table for 46 to 50 °C (US national code 310.15(B)(2)(a)). Those of 80, 125 and 200 °C are
 * from memory: the text of the note was not to be had. What the national code works its table out
 * by, √((rating − 50) / (rating − 30)), makes 0.77 and 0.89 of the first two, and 0.94 of the third.
 */
const ENGINE_SPACE: readonly number[] = [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1];

/**
 * Factors for conductors that carry current side by side in one bundle, sheath or duct, note 2 of
 * the table, as printed after the US Coast Guard's Electrical System Compliance Guideline, table F.
 * The rule itself asks for them only from 50 V on (33 CFR 183.435(b)).
 */
const BUNDLED: readonly (readonly [from: number, factor: number])[] = [
  [25, 0.4],
  [7, 0.5],
  [4, 0.6],
  [3, 0.7],
];

const columnOf = (insulation: Insulation): number => INSULATIONS.indexOf(insulation);

/** Amps of a gauge of the table; null for one that it does not have. */
export function tableAmps(awg: number, insulation: Insulation): number | null {
  const row = CFR_183_425_TABLE_5.find(([own]) => own === awg);
  return row?.[1][columnOf(insulation)] ?? null;
}

export const engineSpaceFactor = (insulation: Insulation): number =>
  ENGINE_SPACE[columnOf(insulation)] ?? 1;

/** `count`: conductors that carry current in the bundle, this one among them. */
export const bundleFactor = (count: number): number =>
  BUNDLED.find(([from]) => count >= from)?.[1] ?? 1;
