import fc from "fast-check";
import { expect, test } from "vitest";
import {
  COLOUR_CODES,
  formatColour,
  IEC_60757,
  nameColour,
  parseColour,
  sameColour,
} from "../../src/standards/index.ts";

test.each([
  ["BNBK", { base: "BN", tracer: "BK" }],
  ["bn/bk", { base: "BN", tracer: "BK" }],
  [" BN-BK ", { base: "BN", tracer: "BK" }],
  ["bn bk", { base: "BN", tracer: "BK" }],
  ["red", { base: "RD" }],
  ["Gray/White", { base: "GY", tracer: "WH" }],
  ["gnye", { base: "GNYE" }],
  ["green-and-yellow", { base: "GNYE" }],
  ["GN/YE", { base: "GN", tracer: "YE" }],
  ["YEGN", { base: "YE", tracer: "GN" }],
  ["RDGNYE", { base: "RD", tracer: "GNYE" }],
])("%j is read as a colour", (text, colour) => {
  expect(parseColour(text)).toEqual(colour);
});

test.each(["", "/", "R", "RDB", "XX", "RDRD", "RDBUGN", "R D", "RDBU1"])(
  "%j is not read as a colour",
  (text) => {
    expect(parseColour(text)).toBeNull();
  },
);

const code = fc.constantFrom(...COLOUR_CODES);
const colours = fc
  .tuple(code, fc.option(code, { nil: undefined }))
  .filter(([base, tracer]) => base !== tracer)
  .map(([base, tracer]) => (tracer ? { base, tracer } : { base }));

test("what is printed is read back, in capitals or not, joined or apart", () => {
  fc.assert(
    fc.property(colours, (colour) => {
      const text = formatColour(colour);
      expect(parseColour(text)).toEqual(colour);
      expect(parseColour(text.toLowerCase())).toEqual(colour);
      if (colour.tracer) expect(parseColour(`${colour.base}/${colour.tracer}`)).toEqual(colour);
    }),
  );
});

test("the base comes first, in letters and in words", () => {
  expect(formatColour({ base: "BN", tracer: "BK" })).toBe("BNBK");
  expect(nameColour({ base: "BN", tracer: "BK" })).toBe("brown with a black tracer");
  expect(nameColour({ base: "BU", tracer: "OG" })).toBe("blue with an orange tracer");
  expect(nameColour({ base: "GNYE" })).toBe(IEC_60757.GNYE.name);
});

test("base and tracer exchanged is another wire; green with yellow is the one colour", () => {
  expect(sameColour({ base: "BN", tracer: "BK" }, { base: "BK", tracer: "BN" })).toBe(false);
  expect(sameColour({ base: "GN", tracer: "YE" }, { base: "GNYE" })).toBe(true);
  expect(sameColour({ base: "RD" }, { base: "RD", tracer: undefined })).toBe(true);
});
