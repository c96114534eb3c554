import { COLOUR_CODES, type ColourCode, IEC_60757 } from "./iec-60757.ts";

/** What people write for a colour, and each colour that it can mean. Upper case. */
export type ColourWords = ReadonlyMap<string, readonly ColourCode[]>;

const named = (words: Readonly<Record<string, ColourCode | readonly ColourCode[]>>): ColourWords =>
  new Map(
    Object.entries(words).map(([word, meant]) => [
      word,
      typeof meant === "string" ? [meant] : meant,
    ]),
  );

/** The letters of IEC 60757. */
export const STANDARD_LETTERS: ColourWords = new Map(COLOUR_CODES.map((code) => [code, [code]]));

/** Colours by name. Purple and slate are what BS AU 7 calls violet and grey. */
export const COLOUR_NAMES: ColourWords = new Map<string, readonly ColourCode[]>([
  ...COLOUR_CODES.map((code): [string, ColourCode[]] => [
    IEC_60757[code].name.toUpperCase(),
    [code],
  ]),
  ["GRAY", ["GY"]],
  ["PURPLE", ["VT"]],
  ["SLATE", ["GY"]],
]);

/**
 * Abbreviations of the English names (common practice, no source). BL is black to one draughtsman
 * and blue to another, GR is green or grey: both meanings are kept.
 */
export const ENGLISH_LETTERS: ColourWords = named({
  BLK: "BK",
  BRN: "BN",
  RED: "RD",
  ORG: "OG",
  ORN: "OG",
  YEL: "YE",
  GRN: "GN",
  BLU: "BU",
  VIO: "VT",
  PUR: "VT",
  PPL: "VT",
  GRY: "GY",
  WHT: "WH",
  PNK: "PK",
  GLD: "GD",
  SLV: "SR",
  BR: "BN",
  OR: "OG",
  VI: "VT",
  PU: "VT",
  YL: "YE",
  WT: "WH",
  BL: ["BK", "BU"],
  GR: ["GN", "GY"],
});

/**
 * German letters of DIN 47002 (withdrawn in 2002), as cables to DIN 47100 and older German wiring
 * diagrams have them; LI for lila is that of DIN 72551.
 */
export const GERMAN_LETTERS: ColourWords = named({
  SW: "BK",
  BR: "BN",
  RT: "RD",
  OR: "OG",
  GE: "YE",
  GN: "GN",
  BL: "BU",
  VI: "VT",
  LI: "VT",
  GR: "GY",
  WS: "WH",
  RS: "PK",
  TK: "TQ",
});
