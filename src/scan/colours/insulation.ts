import { labOf, xyzOf } from "./adaptation.ts";
import type { Lab } from "./colour-difference.ts";

/**
 * What insulation of a code of IEC 60757 looks like in even white light, `#rrggbb`, in the shades that
 * are sold; near the RAL tones that cable makers name for the colours of IEC 60304. From memory: the
 * standard fixes letters, not tones. Gold and silver are left out: their gleam is no colour of a
 * patch, and silver can't be told from grey.
 */
const SHADES = {
  BK: ["#161617", "#2b2b2d"],
  BN: ["#5a3620", "#734222", "#8a5a35"],
  RD: ["#a52019", "#c8202a", "#dc2b2b"],
  OG: ["#e8641b", "#f67828", "#ff8d2a"],
  YE: ["#eec900", "#f5dc1e", "#f2e04a"],
  GN: ["#1c6b35", "#1f8f3f", "#48a43f", "#6cc04a"],
  BU: ["#1b3a80", "#1f5fbf", "#2271b3", "#3f8fd2", "#79b4e0"],
  VT: ["#5c3a80", "#7b3fa0", "#83639d"],
  GY: ["#6b7075", "#858a8e", "#a3a6a8"],
  WH: ["#f4f3ee", "#e6e2d3"],
  PK: ["#e1a6ad", "#ea899a", "#f49ac1"],
  TQ: ["#1fa0a0", "#2bb5b0", "#7cc2bd"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** A code of IEC 60757 that a patch of colour can be told as. */
export type InsulationCode = keyof typeof SHADES;

export const INSULATION_CODES = Object.keys(SHADES) as InsulationCode[];

const hex = (rgb: string, at: number) => Number.parseInt(rgb.slice(at, at + 2), 16);

const LOOKS = new Map<InsulationCode, readonly Lab[]>(
  INSULATION_CODES.map((code) => [
    code,
    SHADES[code].map((rgb) => labOf(xyzOf(hex(rgb, 1), hex(rgb, 3), hex(rgb, 5)))),
  ]),
);

/** The shades of one code as L*a*b* against D65. */
export const looksOf = (code: InsulationCode): readonly Lab[] => LOOKS.get(code) ?? [];
