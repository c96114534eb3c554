import { expect, test } from "vitest";
import { builtInTracer, COLOUR_CODES, IEC_60757, parseColour } from "../../src/standards/index.ts";
import { referenceRows } from "./rows.ts";

const published = referenceRows("codes.csv")?.filter((row) => row.standard === "IEC 60757");

test.skipIf(!published)("every colour letter code of IEC 60757 with its meaning", () => {
  expect(published).toHaveLength(15);
  expect(COLOUR_CODES.map((code) => [code, IEC_60757[code].name])).toEqual(
    published?.map((row) => [row.code, row.meaning]),
  );
});

test("IEC 60757 joins two codes: RDBU is red and blue", () => {
  expect(parseColour("RDBU")).toEqual({ base: "RD", tracer: "BU" });
});

test("IEC 60757: green and yellow together is only GNYE", () => {
  expect(parseColour("GNYE")).toEqual({ base: "GNYE" });
  expect(builtInTracer("GNYE")).toBe("YE");
});
