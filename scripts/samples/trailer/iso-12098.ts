import type { Colour } from "../../../src/job/index.ts";

export interface TrailerPin {
  readonly pin: string;
  readonly function: string;
  readonly colour: Colour;
  readonly mm2: number;
}

const row = (
  pin: number,
  words: string,
  base: Colour["base"],
  tracer: Colour["base"] | null,
  mm2: number,
): TrailerPin => ({
  pin: String(pin),
  function: words,
  colour: tracer ? { base, tracer } : { base },
  mm2,
});

/**
 * Functions, colours and sizes of the fifteen contacts of ISO 12098 (24 V towing connection), as
 * published pin tables of that standard list them; colours in the letters of IEC 60757. Two-colour
 * codes are read as base, then tracer.
 */
export const ISO_12098: readonly TrailerPin[] = [
  row(1, "Left direction indicator", "YE", null, 1.5),
  row(2, "Right direction indicator", "GN", null, 1.5),
  row(3, "Rear fog lamp", "BU", null, 1.5),
  row(4, "Ground", "WH", null, 2.5),
  row(5, "Left tail/marker/plate", "BK", null, 1.5),
  row(6, "Right tail/marker/plate", "BN", null, 1.5),
  row(7, "Stop lamps", "RD", null, 1.5),
  row(8, "Reversing lamps", "PK", null, 1.5),
  row(9, "+24 V supply", "OG", null, 2.5),
  row(10, "Brake-lining wear sensor", "GY", null, 1.5),
  row(11, "Spring-brake pressure sensor", "WH", "BK", 1.5),
  row(12, "Axle lift", "WH", "BU", 1.5),
  row(13, "Ground for data (14/15)", "WH", "RD", 2.5),
  row(14, "Data communication (CAN H)", "WH", "GN", 1.5),
  row(15, "Data communication (CAN L)", "WH", "BN", 1.5),
];
