import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { INSULATION_CODES, type InsulationCode } from "../../../src/scan/colours/insulation.ts";
import { estimateWhite, whiteAt } from "../../../src/scan/colours/photo-white.ts";
import { type SeenWire, seenWire } from "../../../src/scan/colours/seen-wire.ts";
import { COLOUR_CODES } from "../../../src/standards/index.ts";
import {
  type Chromaticity,
  lightOf,
  middleOfWire,
  WIRE_PHOTO,
  type WirePhoto,
  wirePhoto,
} from "../../support/wire-photo.ts";

/** Chromaticities of CIE 15, 2° observer: A is a filament lamp of 2856 K, F2 and F11 are fluorescent lamps. */
const LIGHTS: Readonly<Record<string, Chromaticity>> = {
  D65: [0.31272, 0.32903],
  A: [0.44758, 0.40745],
  F2: [0.37208, 0.37529],
  F11: [0.38052, 0.37713],
};

/** Insulation as it might be: tones of this test's own, none of them among the reference shades. */
const LOOK: Readonly<Record<InsulationCode, string>> = {
  BK: "#1d1d20",
  BN: "#6b4020",
  RD: "#c0242a",
  OG: "#ee7320",
  YE: "#f0d31a",
  GN: "#2b9245",
  BU: "#2668b8",
  VT: "#70459a",
  GY: "#74797e",
  WH: "#f0efea",
  PK: "#eb93b0",
  TQ: "#30aca8",
};
const CARD = [190, 142] as const;
const REACH = 9;

function photoOf(
  base: string,
  stripe: string | null,
  light: Chromaticity,
  change: Partial<WirePhoto> = {},
): WirePhoto {
  const beside = (look: string) => ({ base: look, stripe: null });
  const wires = [beside(LOOK.RD), { base, stripe }, beside(LOOK.BU)];
  return { ...WIRE_PHOTO, bench: "#b1a996", light, wires, ...change };
}

function seenIn(photo: WirePhoto, seed = 1, white: "tapped" | "estimated" = "tapped"): SeenWire {
  const picture = wirePhoto(photo, seededRandom(seed).next);
  const seen = seenWire(
    picture,
    middleOfWire(photo, 1),
    REACH,
    (white === "tapped" ? whiteAt(picture, CARD, 8) : null) ?? estimateWhite(picture),
  );
  if (!seen) throw new Error("nothing seen");
  return seen;
}

const first = (colour: SeenWire["base"] | null) => colour?.ranked[0]?.code ?? null;
const likely = (colour: SeenWire["base"]) =>
  colour.ranked.slice(0, colour.likely).map(({ code }) => code);

test("every code of the standard that is a colour can be told, gold, silver and GNYE apart", () => {
  expect(INSULATION_CODES).toEqual(COLOUR_CODES.filter((code) => !/^(GD|SR|GNYE)$/.test(code)));
});

describe.each(Object.entries(LIGHTS))("under light %s", (name, light) => {
  test.each(INSULATION_CODES)("plain %s is proposed, alone or among near ties", (code) => {
    const seen = seenIn(photoOf(LOOK[code], null, light, { gleam: false }));
    expect(likely(seen.base)).toContain(code);
    expect(seen.tracer).toBeNull();
    if (seen.isSure) expect(first(seen.base)).toBe(code);
  });

  test.each([
    ["BN", "BK"],
    ["RD", "YE"],
    ["GN", "BU"],
    ["YE", "RD"],
    ["BK", "GN"],
    ["VT", "YE"],
  ] as const)("base %s is told from its tracer %s", (base, tracer) => {
    const seen = seenIn(photoOf(LOOK[base], LOOK[tracer], light), 3);
    expect(likely(seen.base)).toContain(base);
    expect(seen.tracer && likely(seen.tracer)).toContain(tracer);
    expect(seen.base.share).toBeGreaterThan(seen.tracer?.share ?? 1);
  });

  test("the white is found without anybody's help, to the eye", () => {
    const picture = wirePhoto(photoOf(LOOK.GN, LOOK.WH, light), seededRandom(5).next);
    const white = estimateWhite(picture);
    expect(white.from).toBe("neutral");
    const [x, y, z] = white.xyz;
    const [r, g, b] = lightOf(light);
    const meant = [
      0.4124 * r + 0.3576 * g + 0.1805 * b,
      0.2126 * r + 0.7152 * g + 0.0722 * b,
      0.0193 * r + 0.1192 * g + 0.9505 * b,
    ] as const;
    expect(x / y).toBeCloseTo(meant[0] / meant[1], 1);
    expect(z / y).toBeCloseTo(meant[2] / meant[1], 1);
  });

  test(`no wrong colour is ever called sure (${name})`, () => {
    const pairs = INSULATION_CODES.flatMap((base, i) =>
      [5].map((step) => [base, INSULATION_CODES[(i + step) % 12] ?? "BK"] as const),
    );
    const wrong = pairs.flatMap(([base, tracer], index) =>
      (["tapped", "estimated"] as const).flatMap((white) => {
        const seen = seenIn(photoOf(LOOK[base], LOOK[tracer], light), index + 10, white);
        const told = `${first(seen.base)}${first(seen.tracer)}`;
        return seen.isSure && told !== base + tracer ? [`${base}${tracer} told as ${told}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });
});

describe("what can't be told is not", () => {
  test.each([
    ["a blue as dark as black", "#14182c", "BU", "BK"],
    ["between brown and red", "#7d3526", "BN", "RD"],
    ["between red and orange", "#e0431f", "RD", "OG"],
    ["between violet and blue", "#4a4fa8", "VT", "BU"],
  ] as const)("%s: both are offered, and neither is sure", (_, look, one, other) => {
    const seen = seenIn(photoOf(look, null, LIGHTS.D65 as Chromaticity, { gleam: false }));
    expect(likely(seen.base)).toEqual(expect.arrayContaining([one, other]));
    expect(seen.isSure).toBe(false);
  });

  test("grey is not sure until somebody points at a white", () => {
    const photo = photoOf(LOOK.GY, null, LIGHTS.D65 as Chromaticity, { gleam: false });
    expect(seenIn(photo, 1, "estimated").isSure).toBe(false);
    expect(seenIn(photo, 1, "tapped").isSure).toBe(true);
  });

  test("touched beside its stripe a wire is seen whole", () => {
    const photo = photoOf(LOOK.GN, LOOK.YE, LIGHTS.A as Chromaticity, { gleam: false });
    const picture = wirePhoto(photo, seededRandom(4).next);
    const [x, y] = middleOfWire(photo, 1);
    const white = whiteAt(picture, CARD, 8) ?? estimateWhite(picture);
    const seen = seenWire(picture, [x, y + 8], 5, white);
    expect(seen && first(seen.base)).toBe("GN");
    expect(seen && first(seen.tracer)).toBe("YE");
  });

  test("a gleam along a wire may be a pale tracer: it is asked", () => {
    const seen = seenIn(photoOf(LOOK.BU, null, LIGHTS.D65 as Chromaticity));
    expect(first(seen.base)).toBe("BU");
    expect(seen.isSure).toBe(false);
  });

  test("green and yellow in like shares may be the one colour GNYE", () => {
    const wide = photoOf(LOOK.GN, LOOK.YE, LIGHTS.D65 as Chromaticity, { stripe: 0.7 });
    expect(seenIn(wide).isGnye).toBe(true);
    expect(seenIn(wide).isSure).toBe(false);
    expect(seenIn({ ...wide, stripe: 0.2 }).isGnye).toBe(false);
  });

  test("a spot that is too bright has no colour", () => {
    const photo = photoOf("#ffffff", null, [0.3127, 0.329], { exposure: 3, shade: 0, noise: 0 });
    const picture = wirePhoto(photo, seededRandom(1).next);
    const white = { xyz: [0.95, 1, 1.09], from: "none", isDoubtful: true } as const;
    expect(seenWire(picture, middleOfWire(photo, 1), REACH, white)).toBeNull();
    expect(whiteAt(picture, CARD, 8)).toBeNull();
  });

  test("a photo without any white or grey surface has a doubtful white", () => {
    const photo = photoOf(LOOK.GN, null, [0.3127, 0.329], { card: false, bench: "#1d6b34" });
    expect(estimateWhite(wirePhoto(photo, seededRandom(2).next)).isDoubtful).toBe(true);
  });
});
