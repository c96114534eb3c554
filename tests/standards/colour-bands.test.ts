import { wcagContrast } from "culori";
import { expect, test } from "vitest";
import { COLOUR_CODES, colourBands } from "../../src/standards/index.ts";

const pairs = COLOUR_CODES.flatMap((base) =>
  COLOUR_CODES.filter((tracer) => tracer !== base).map((tracer) => ({ base, tracer })),
);

// Contrast by another program's formula (culori, after WCAG 2).
test("every stripe shows on its base by brightness alone, with an edge where it must", () => {
  for (const colour of pairs) {
    const { base, stripe, edge } = colourBands(colour);
    const where = `${colour.base}/${colour.tracer}`;
    expect(stripe, where).not.toBeNull();
    if (edge) {
      expect(wcagContrast(edge, base), where).toBeGreaterThan(1.6);
      expect(wcagContrast(edge, stripe ?? ""), where).toBeGreaterThan(1.6);
    } else expect(wcagContrast(base, stripe ?? ""), where).toBeGreaterThanOrEqual(1.59);
  }
});

test("red with a green stripe and white with a yellow one have an edge, black with white has none", () => {
  expect(colourBands({ base: "RD", tracer: "GN" }).edge).toBe("#ffffff");
  expect(colourBands({ base: "WH", tracer: "YE" }).edge).toBe("#1c1c1c");
  expect(colourBands({ base: "BK", tracer: "WH" }).edge).toBeNull();
});

test("one colour has no stripe, green-and-yellow its own", () => {
  expect(colourBands({ base: "YE" }).stripe).toBeNull();
  expect(colourBands({ base: "GNYE" })).toEqual(colourBands({ base: "GN", tracer: "YE" }));
});
