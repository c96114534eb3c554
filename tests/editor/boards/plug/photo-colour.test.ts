import { expect, test } from "vitest";
import { colourOf, pickedAtFirst } from "../../../../src/editor/boards/plug/photo-colour-sheet.tsx";
import type { SeenWire } from "../../../../src/scan/index.ts";

const colour = (code: "RD" | "BN" | "YE", likely = 1): SeenWire["base"] => ({
  ranked: [{ code, deltaE: 3 }],
  likely,
  share: 0.8,
  rgb: "#c0242a",
});

const wire = (change: Partial<SeenWire>): SeenWire => ({
  base: colour("RD"),
  tracer: null,
  maybe: null,
  isSure: true,
  doubt: null,
  isGnye: false,
  ...change,
});

test("of what can't be told nothing stands chosen, and nothing can be noted", () => {
  const picked = pickedAtFirst(wire({ isSure: false, doubt: "light", tracer: colour("YE") }));
  expect(picked).toEqual({ base: undefined, tracer: undefined });
  expect(colourOf(picked)).toBeNull();
  expect(colourOf({ ...picked, base: "RD" })).toBeNull();
  expect(colourOf({ base: "RD", tracer: "YE" })).toEqual({ base: "RD", tracer: "YE" });
});

test("what is plain stands chosen, still to be noted by the user", () => {
  expect(colourOf(pickedAtFirst(wire({ tracer: colour("YE") })))).toEqual({
    base: "RD",
    tracer: "YE",
  });
});

test("that there is no tracer is for the user to say: the other side is not seen", () => {
  const picked = pickedAtFirst(wire({}));
  expect(picked).toEqual({ base: "RD", tracer: undefined });
  expect(colourOf(picked)).toBeNull();
  expect(colourOf({ ...picked, tracer: null })).toEqual({ base: "RD" });
});

test.each(["white", "beside", "light", "near"] as const)(
  "nothing is said of a stripe where there is doubt: %s",
  (doubt) => {
    const picked = pickedAtFirst(wire({ isSure: false, doubt }));
    expect(picked).toEqual({ base: undefined, tracer: undefined });
    expect(colourOf({ ...picked, base: "RD" })).toBeNull();
  },
);
