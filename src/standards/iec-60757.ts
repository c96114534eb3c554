/**
 * Colour letters of IEC 60757. The standard joins two codes in table order for a two-colour
 * wire (`RDBU`) and does not say which is the base; green-and-yellow together is only `GNYE`.
 */
export const IEC_60757 = {
  BK: { name: "black", rgb: "#1c1c1c" },
  BN: { name: "brown", rgb: "#7a4a21" },
  RD: { name: "red", rgb: "#d3232b" },
  OG: { name: "orange", rgb: "#f58220" },
  YE: { name: "yellow", rgb: "#f7d90f" },
  GN: { name: "green", rgb: "#1f8f3f" },
  BU: { name: "blue", rgb: "#1f5fbf" },
  VT: { name: "violet", rgb: "#7b3fa0" },
  GY: { name: "grey", rgb: "#8c8c8c" },
  WH: { name: "white", rgb: "#ffffff" },
  PK: { name: "pink", rgb: "#f49ac1" },
  GD: { name: "gold", rgb: "#c9a227" },
  TQ: { name: "turquoise", rgb: "#2bb5b0" },
  SR: { name: "silver", rgb: "#c6c9cc" },
  GNYE: { name: "green-and-yellow", rgb: "#1f8f3f" },
} as const;

export type ColourCode = keyof typeof IEC_60757;

export const COLOUR_CODES = Object.keys(IEC_60757) as ColourCode[];

/** The second stripe that a code brings with it: only `GNYE` has one. */
export const builtInTracer = (code: ColourCode): ColourCode | null =>
  code === "GNYE" ? "YE" : null;
