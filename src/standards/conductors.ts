/**
 * Conductor resistance at 20 °C.
 * Sizes in mm²: IEC 60228 class 5 (flexible, plain copper), greatest Ω/km of table 3.
 * Gauge numbers: ASTM B258 diameters, d = 0.127 · 92^((36 − n) / 39) mm, with 1.7241e-8 Ω·m.
 */
export const IEC_60228_CLASS_5: readonly (readonly [mm2: number, ohmsPerKilometre: number])[] = [
  [0.5, 39.0],
  [0.75, 26.0],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
];

/** Ω·m of annealed copper at 20 °C, as ASTM B258 uses it. */
const COPPER_RESISTIVITY = 1.7241e-8;

/** Ω per metre of a flexible copper conductor; sizes between the table's are scaled by area. */
export function ohmsPerMetreOfArea(mm2: number): number {
  const first = IEC_60228_CLASS_5[0] ?? [1, 19.5];
  const nearest = IEC_60228_CLASS_5.reduce(
    (best, row) =>
      Math.abs(Math.log(row[0] / mm2)) < Math.abs(Math.log(best[0] / mm2)) ? row : best,
    first,
  );
  return ((nearest[1] / 1000) * nearest[0]) / mm2;
}

/** Diameter in millimetres of a gauge number; 0, -1, -2, -3 stand for 1/0, 2/0, 3/0, 4/0. */
export const gaugeDiameter = (awg: number): number => 0.127 * 92 ** ((36 - awg) / 39);

/** Cross-section of a gauge number in mm². */
export const gaugeArea = (awg: number): number => (Math.PI / 4) * gaugeDiameter(awg) ** 2;

/** Ω per metre of a solid copper conductor of a gauge number. */
export const ohmsPerMetreOfGauge = (awg: number): number =>
  COPPER_RESISTIVITY / (gaugeArea(awg) * 1e-6);
