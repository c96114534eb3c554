import type { Conductors, Wire } from "../job/index.ts";
import {
  bundleFactor,
  CFR_183_425_TABLE_5,
  engineSpaceFactor,
  gaugeName,
  gaugeNotThinner,
  INSULATIONS,
  MOST_FUSE_SHARE,
  tableAmps,
} from "../standards/index.ts";

/** What the chosen table lets a wire and the fuse before it have. */
export interface FuseLimit {
  /** A of the wire, factors counted in. */
  readonly wireAmps: number;
  /** A of the largest fuse. */
  readonly fuseAmps: number;
  /** `1.5 mm², counted as AWG 14` */
  readonly size: string;
  /** `33 CFR 183.425 table 5, 105 °C insulation, engine space × 0.85` */
  readonly by: string;
}

export const TABLE_NAME = "33 CFR 183.425 table 5";
const GAUGES = CFR_183_425_TABLE_5.map(([awg]) => awg);
const THINNEST = Math.max(...GAUGES);

/**
 * Null where the wire's size is not known or is thicker than all of the table. Of a size between two
 * rows the thicker one counts, and one thinner than all carries no more than the thinnest: never less
 * than it carries. Without an insulation chosen the most generous column counts.
 */
export function fuseLimit(wire: Wire, conductors: Conductors | undefined): FuseLimit | null {
  const awg = rowOf(wire);
  if (awg === null) return null;
  const { insulation, engineSpace, bundled } = conductors ?? {};
  const own = insulation === undefined ? generous(awg) : tableAmps(awg, insulation);
  if (own === null) return null;
  const factors: [string, number][] =
    insulation === undefined
      ? []
      : [
          ...(engineSpace
            ? [["engine space", engineSpaceFactor(insulation)] as [string, number]]
            : []),
          ...(bundled
            ? [[`${bundled} in a bundle`, bundleFactor(bundled)] as [string, number]]
            : []),
        ];
  const wireAmps = rounded(factors.reduce((amps, [, factor]) => amps * factor, own));
  const column =
    insulation === undefined ? "its most generous column" : `${insulation} °C insulation`;
  return {
    wireAmps,
    fuseAmps: rounded(wireAmps * MOST_FUSE_SHARE),
    size: sizeName(wire, awg),
    by: [TABLE_NAME, column, ...factors.map(([name, factor]) => `${name} × ${factor}`)].join(", "),
  };
}

const rounded = (amps: number): number => Number(amps.toFixed(2));

const generous = (awg: number): number | null => {
  const all = INSULATIONS.flatMap((insulation) => tableAmps(awg, insulation) ?? []);
  return all.length === 0 ? null : Math.max(...all);
};

/** The row that counts for a wire; of a wire with both sizes the thicker one. */
function rowOf({ mm2, awg }: Wire): number | null {
  const rows = [
    mm2 === undefined ? null : gaugeNotThinner(mm2, GAUGES),
    awg === undefined ? null : Math.max(...GAUGES.filter((gauge) => gauge <= awg)),
  ];
  if ((mm2 !== undefined && rows[0] === null) || (mm2 === undefined && awg === undefined))
    return null;
  const known = rows.filter((row) => row !== null && Number.isFinite(row)) as number[];
  return known.length === 0 ? null : Math.min(...known);
}

function sizeName({ mm2, awg }: Wire, row: number): string {
  const own = mm2 !== undefined ? `${mm2} mm²` : `AWG ${gaugeName(awg ?? row)}`;
  if (mm2 === undefined && awg === row) return own;
  const thin = mm2 === undefined && (awg ?? 0) > THINNEST;
  return `${own}, ${thin ? "at most as" : "counted as"} AWG ${gaugeName(row)}`;
}
