import { gaugeArea } from "./conductors.ts";

/**
 * Gauge numbers beside mm². Two mappings are published and disagree: the metric sizes of SAE, which
 * lie at or under the gauge's own area, and what drawings from Europe put for a gauge.
 */
export const GAUGE_MAPPINGS = {
  sae: [
    [20, 0.5],
    [18, 0.8],
    [16, 1],
    [14, 2],
    [12, 3],
    [10, 5],
    [8, 8],
  ],
  european: [
    [20, 0.5],
    [18, 0.75],
    [16, 1],
    [14, 1.5],
    [12, 2.5],
    [10, 4],
    [8, 6],
  ],
} as const satisfies Record<string, readonly (readonly [awg: number, mm2: number])[]>;

export type GaugeMapping = keyof typeof GAUGE_MAPPINGS;

/** mm² that a mapping has for a gauge; null where it has none. */
export const areaInMapping = (awg: number, mapping: GaugeMapping): number | null =>
  GAUGE_MAPPINGS[mapping].find(([gauge]) => gauge === awg)?.[1] ?? null;

/** The gauge that a mapping has for a size in mm²; null where it has none. */
export const gaugeInMapping = (mm2: number, mapping: GaugeMapping): number | null =>
  GAUGE_MAPPINGS[mapping].find(([, area]) => area === mm2)?.[0] ?? null;

/**
 * The thinnest of some gauges (ASTM B258) that is not thinner than a conductor of so many mm²: never
 * less than the conductor carries. Both mappings agree with it. Null where it is thicker than all.
 */
export function gaugeNotThinner(mm2: number, gauges: readonly number[]): number | null {
  const wide = gauges.filter((awg) => gaugeArea(awg) >= mm2);
  return wide.length === 0 ? null : Math.max(...wide);
}

/** `18`, `4/0`: as gauges are written. */
export const gaugeName = (awg: number): string => (awg > 0 ? String(awg) : `${1 - awg}/0`);

/**
 * Whether a conductor of so many mm² may be what somebody else calls by a gauge: where one mapping has
 * it so, or the size lies between what they have and the gauge's own area (ASTM B258). Of a gauge that
 * neither mapping has, nothing is known but its area: up to two gauges either way are let pass.
 */
export function mayBeGauge(mm2: number, awg: number): boolean {
  const mapped = (Object.keys(GAUGE_MAPPINGS) as GaugeMapping[]).flatMap(
    (mapping) => areaInMapping(awg, mapping) ?? [],
  );
  const sizes =
    mapped.length > 0
      ? [...mapped, gaugeArea(awg)]
      : [gaugeArea(awg + LET_PASS), gaugeArea(awg - LET_PASS)];
  return mm2 >= Math.min(...sizes) - ROUNDED && mm2 <= Math.max(...sizes) + ROUNDED;
}

const LET_PASS = 2;
/** mm²: sizes are written with two decimals at most. */
const ROUNDED = 0.005;
