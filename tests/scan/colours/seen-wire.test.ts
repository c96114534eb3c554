import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { INSULATION_CODES } from "../../../src/scan/colours/insulation.ts";
import { estimateWhite, whiteAt } from "../../../src/scan/colours/photo-white.ts";
import { type SeenWire, seenWire } from "../../../src/scan/colours/seen-wire.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { COLOUR_CODES } from "../../../src/standards/index.ts";
import {
  type Chromaticity,
  lightOf,
  middleOfWire,
  WIRE_PHOTO,
  type WirePhoto,
  wirePhoto,
} from "../../support/wire-photo.ts";
import { LIGHTS, LOOK } from "../../support/wire-trials.ts";

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
  const under = (white === "tapped" ? whiteAt(picture, CARD, 8) : null) ?? estimateWhite(picture);
  const seen = finished(seenWire(picture, middleOfWire(photo, 1), REACH, under));
  if (!seen) throw new Error("nothing seen");
  return seen;
}

const first = (colour: SeenWire["base"] | null) => colour?.ranked[0]?.code ?? null;
const likely = (colour: SeenWire["base"]) =>
  colour.ranked.slice(0, colour.likely).map(({ code }) => code);

test("every code of the standard that is a colour can be told, gold, silver and GNYE apart", () => {
  expect(INSULATION_CODES).toEqual(COLOUR_CODES.filter((code) => !/^(GD|SR|GNYE)$/.test(code)));
});

describe.each(Object.entries(LIGHTS))("under light %s", (_, light) => {
  test.each(INSULATION_CODES)("plain %s is proposed, alone or among near ties", (code) => {
    const seen = seenIn(photoOf(LOOK[code], null, light, { gleam: "none" }));
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
});

describe("what can't be told is not", () => {
  test.each([
    ["a blue as dark as black", "#14182c", "BU", "BK"],
    ["between brown and red", "#7d3526", "BN", "RD"],
    ["between red and orange", "#e0431f", "RD", "OG"],
    ["between violet and blue", "#4a4fa8", "VT", "BU"],
  ] as const)("%s: both are offered, and neither is sure", (_, look, one, other) => {
    const seen = seenIn(photoOf(look, null, LIGHTS.D65, { gleam: "none" }));
    expect(likely(seen.base)).toEqual(expect.arrayContaining([one, other]));
    expect(seen.isSure).toBe(false);
  });

  test("grey is not sure until somebody points at a white", () => {
    const photo = photoOf(LOOK.GY, null, LIGHTS.D65, { gleam: "none" });
    expect(seenIn(photo, 1, "estimated").isSure).toBe(false);
    expect(seenIn(photo, 1, "tapped").isSure).toBe(true);
  });

  test("touched beside its stripe a wire is seen whole", () => {
    const photo = photoOf(LOOK.GN, LOOK.YE, LIGHTS.A, { gleam: "none" });
    const picture = wirePhoto(photo, seededRandom(4).next);
    const [x, y] = middleOfWire(photo, 1);
    const white = whiteAt(picture, CARD, 8) ?? estimateWhite(picture);
    const seen = finished(seenWire(picture, [x, y + 8], 5, white));
    expect(seen && first(seen.base)).toBe("GN");
    expect(seen && first(seen.tracer)).toBe("YE");
  });

  test("a gleam along a wire may be a pale tracer: it is asked", () => {
    const seen = seenIn(photoOf(LOOK.BU, null, LIGHTS.D65));
    expect(first(seen.base)).toBe("BU");
    expect(seen.isSure).toBe(false);
  });

  test("green and yellow in like shares may be the one colour GNYE", () => {
    const wide = photoOf(LOOK.GN, LOOK.YE, LIGHTS.D65, { stripe: 0.7 });
    expect(seenIn(wide).isGnye).toBe(true);
    expect(seenIn(wide).isSure).toBe(false);
    expect(seenIn({ ...wide, stripe: 0.2 }).isGnye).toBe(false);
  });

  test("a spot that is too bright has no colour", () => {
    const photo = photoOf("#ffffff", null, [0.3127, 0.329], { exposure: 3, shade: 0, noise: 0 });
    const picture = wirePhoto(photo, seededRandom(1).next);
    const white = { xyz: [0.95, 1, 1.09], from: "none", isDoubtful: true } as const;
    expect(finished(seenWire(picture, middleOfWire(photo, 1), REACH, white))).toBeNull();
    expect(whiteAt(picture, CARD, 8)).toBeNull();
  });

  test("a photo without any white or grey surface has a doubtful white", () => {
    const photo = photoOf(LOOK.GN, null, [0.3127, 0.329], { card: false, bench: "#1d6b34" });
    expect(estimateWhite(wirePhoto(photo, seededRandom(2).next)).isDoubtful).toBe(true);
  });

  /** A wire alone on a bench, seen near: the ring is a fourth of its breadth. */
  const near = (change: Partial<WirePhoto>, stripe: string | null = LOOK.YE): WirePhoto => ({
    ...WIRE_PHOTO,
    width: 320,
    height: 240,
    radius: 24,
    pitch: 400,
    gleam: "none",
    bench: "#b1a996",
    wires: [{ base: LOOK.GN, stripe }],
    ...change,
  });
  const tappedAt = (photo: WirePhoto, off: number, reach = 6): SeenWire => {
    const picture = wirePhoto(photo, seededRandom(7).next);
    const [x, y] = middleOfWire(photo, 0);
    const angle = (photo.turn * Math.PI) / 180;
    const at = [x - off * Math.sin(angle), y + off * Math.cos(angle)] as const;
    const white = whiteAt(picture, [300, 225], 8) ?? estimateWhite(picture);
    const seen = finished(seenWire(picture, at, reach, white));
    if (!seen) throw new Error("nothing seen");
    return seen;
  };

  test.each([-14, -10, 2, 14])("a stripe beside the ring is seen, %f pixels off", (off) => {
    const seen = tappedAt(near({}), off);
    expect(first(seen.base)).toBe("GN");
    expect(first(seen.tracer)).toBe("YE");
  });

  test.each([25, 50, 75, 100, 125])(
    "a stripe that winds round is seen between its turns, %f pixels along",
    (phase) => {
      const seen = tappedAt(near({ twist: 150, stripe: 0.7, phase }), 0);
      expect(first(seen.base)).toBe("GN");
      expect(first(seen.tracer)).toBe("YE");
    },
  );

  test("a gleam on a round wire is no white stripe, and it is asked", () => {
    const seen = tappedAt(near({ gleam: "soft" }, null), 0);
    expect(first(seen.base)).toBe("GN");
    expect(seen.tracer).toBeNull();
    expect(seen.maybe).not.toBeNull();
    expect(seen.doubt).toBe("light");
  });

  test("the shaded side of a wire is no dark stripe", () => {
    const seen = tappedAt(near({ sun: 60, shade: 0.8 }, null), 0);
    expect(first(seen.base)).toBe("GN");
    expect(seen.tracer).toBeNull();
  });

  test("touched on a turn of a wound stripe it may be taken for a wire of its own: it is asked", () => {
    const seen = tappedAt(near({ twist: 150, stripe: 0.7, phase: 0 }), 0);
    expect(seen.doubt).toBe("beside");
  });

  test("a wire whose stripe lies outside the photo may have one: none is not said", () => {
    const picture = wirePhoto(near({ turn: 0, height: 40, card: false }), seededRandom(7).next);
    // Ten rows beside the stripe.
    const cut = { ...picture, height: 10, data: picture.data.slice(4 * 320 * 30) };
    const white = { xyz: [0.95, 1, 1.09], from: "tapped", isDoubtful: false } as const;
    const seen = finished(seenWire(cut, [160, 5], 4, white));
    expect(seen && first(seen.base)).toBe("GN");
    expect(seen?.tracer).toBeNull();
    expect(seen?.doubt).toBe("beside");
  });

  test("the work may be left for good between two slices", () => {
    const picture = wirePhoto(near({}), seededRandom(7).next);
    const work = seenWire(picture, [160, 120], 6, estimateWhite(picture));
    const slices = [work.next(), work.next(), work.return(null)];
    expect(slices.map(({ done }) => done)).toEqual([false, false, true]);
    expect(work.next().done).toBe(true);
  });
});
