import fc from "fast-check";
import { expect, test } from "vitest";
import {
  COLOUR_CODES,
  compareColours,
  ENGLISH_LETTERS,
  formatColour,
  GERMAN_LETTERS,
  IEC_60757,
  nameColour,
  parseColour,
  readColours,
  sameColour,
  whyNoColour,
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

// English abbreviations and ways to write a stripe: common practice, no source.
test.each([
  ["WHT/BLK", "WHBK"],
  ["wht-blk", "WHBK"],
  ["BLKWHT", "BKWH"],
  ["GRN+YEL", "GN/YE"],
  ["BRN.ORG", "BNOG"],
  ["gry_pnk", "GYPK"],
  ["BR/WH", "BNWH"],
  ["purple", "VT"],
  ["slate", "GY"],
  ["red with blue stripe", "RDBU"],
  ["red with a blue tracer", "RDBU"],
  ["red w/ blue", "RDBU"],
  ["red (blue tracer)", "RDBU"],
  ["blue stripe on red", "RDBU"],
  ["green and yellow", "GNYE"],
  ["green/yellow", "GN/YE"],
])("%j, as it is written in the trade, is %s", (text, code) => {
  expect(readColours(text).map(formatColour)).toEqual([code]);
});

// DIN 47002, as the German Wikipedia's article on colour letters ("Farb-Kurzzeichen") sets it beside
// IEC 60757.
const DIN_47002 = {
  sw: "BK",
  br: "BN",
  rt: "RD",
  or: "OG",
  ge: "YE",
  gn: "GN",
  bl: "BU",
  vi: "VT",
  gr: "GY",
  ws: "WH",
  rs: "PK",
  tk: "TQ",
} as const;

test("the German letters are those of DIN 47002, and the lila of DIN 72551", () => {
  const ours = Object.fromEntries([...GERMAN_LETTERS].map(([letters, code]) => [letters, code]));
  const published = Object.entries(DIN_47002).map(([letters, code]) => [
    letters.toUpperCase(),
    [code],
  ]);
  expect(ours).toEqual({ ...Object.fromEntries(published), LI: ["VT"] });
});

// Cores of a cable to DIN 47100, in the letters of a published table: 11, 12, 13, 20, 25, 33 and 43
test.each([
  ["gr/rs", "GYPK"],
  ["rt/bl", "RDBU"],
  ["ws/gn", "WHGN"],
  ["rs/br", "PKBN"],
  ["ws/sw", "WHBK"],
  ["gn/rt", "GNRD"],
  ["bl/sw", "BUBK"],
])("the core %s of a DIN 47100 cable is %s", (text, code) => {
  expect(readColours(text).map(formatColour)).toEqual([code]);
});

test.each([
  ["sw", "BK"],
  ["sw/rt", "BKRD"],
  ["brws", "BNWH"],
  ["gnge", "GN/YE"],
  ["blws", "BUWH"],
  ["gr/rs", "GYPK"],
  ["vi or", "VTOG"],
])("%j in German letters is %s", (text, code) => {
  expect(readColours(text).map(formatColour)).toEqual([code]);
});

test.each([
  ["bl", ["BK", "BU"]],
  ["GR", ["GN", "GY"]],
  ["BL/WH", ["BKWH", "BUWH"]],
  ["rdgr", ["RDGN", "RDGY"]],
  ["blue on red", ["RDBU", "BURD"]],
  ["red stripe white", ["WHRD", "RDWH"]],
])("%j can mean more than one colour, and none is guessed", (text, codes) => {
  expect(readColours(text).map(formatColour)).toEqual(codes);
  expect(parseColour(text)).toBeNull();
  for (const code of codes) expect(whyNoColour(text)).toContain(code);
});

test.each(["light blue", "LT BLU", "tan", "red stripe", "B", "red or blue", "red blue white"])(
  "%j is none of the standard's colours, or not one wire's",
  (text) => {
    expect(readColours(text)).toEqual([]);
    expect(whyNoColour(text)).toMatch(/no colour code/);
  },
);

test("no other letters mean something else than the standard's where they are the same", () => {
  for (const habit of [ENGLISH_LETTERS, GERMAN_LETTERS]) {
    for (const [letters, meant] of habit) {
      if (letters in IEC_60757) expect([letters, meant]).toEqual([letters, [letters]]);
    }
  }
});

const code = fc.constantFrom(...COLOUR_CODES);
const colours = fc
  .tuple(code, fc.option(code, { nil: undefined }))
  .filter(([base, tracer]) => base !== tracer)
  .map(([base, tracer]) => (tracer ? { base, tracer } : { base }));

test("what is printed is read back, in capitals or not, joined or apart", () => {
  fc.assert(
    fc.property(colours, (colour) => {
      const text = formatColour(colour);
      expect(readColours(text)).toEqual([colour]);
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

test("the same two colours the other way round are turned, anything else is different", () => {
  fc.assert(
    fc.property(colours, colours, (a, b) => {
      const shown = compareColours(a, b);
      expect(compareColours(b, a)).toBe(shown);
      expect(shown === "same").toBe(sameColour(a, b));
      expect(compareColours(a, a)).toBe("same");
      const turned = a.tracer && { base: a.tracer, tracer: a.base };
      if (turned) expect(compareColours(a, turned)).toBe("turned");
      if (!a.tracer) expect(shown).not.toBe("turned");
    }),
  );
});
