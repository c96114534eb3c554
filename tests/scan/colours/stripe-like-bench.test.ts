import { describe, expect, test } from "vitest";
import { type Random, seededRandom } from "../../../src/base/index.ts";
import { finished, type SeenWire, seenWire, whiteAt } from "../../../src/scan/index.ts";
import { type WirePhoto, wirePhoto } from "../../support/wire-photo.ts";
import { CARD, type Code, LOOK, placeOnWire, TRIAL_PHOTO } from "../../support/wire-trials.ts";

/** `PINTRUTH_SEED` tries other photos. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

/** A wire between two others, the bench of a colour of its own choosing; `off` and `reach` in radii of the wire. */
function touched(
  random: Random,
  { base, stripe, bench }: { base: Code; stripe: Code | null; bench: string },
  change: Partial<WirePhoto>,
  { off, reach }: { off: number; reach: number },
): SeenWire | null {
  const photo: WirePhoto = {
    ...TRIAL_PHOTO,
    bench,
    wires: [
      { base: LOOK.TQ, stripe: null },
      { base: LOOK[base], stripe: stripe && LOOK[stripe] },
      { base: LOOK.OG, stripe: null },
    ],
    turn: 40 * random.next() - 20,
    ...change,
  };
  const picture = wirePhoto(photo, random.next);
  const white = whiteAt(picture, CARD, 8);
  if (!white) throw new Error("no white card");
  const { radius } = photo;
  return finished(seenWire(picture, placeOnWire(photo, off * radius), reach * radius, white));
}

/** A stripe down the middle touched on its flank and on itself, and one at the side touched beside it. */
const PLACES = [
  { name: "beside a broad stripe", stripe: 0.6, stripeAt: 0.05, off: -0.6, reach: 0.3 },
  { name: "on a broad stripe", stripe: 0.65, stripeAt: 0, off: 0.05, reach: 0.3 },
  { name: "beside a stripe at the side", stripe: 0.35, stripeAt: 0.65, off: -0.1, reach: 0.7 },
  { name: "far beside a stripe", stripe: 0.4, stripeAt: 0.4, off: -0.4, reach: 0.35 },
] as const;

const PAIRS = [
  ["BK", "GY"],
  ["BN", "GY"],
  ["BK", "VT"],
  ["RD", "PK"],
  ["YE", "OG"],
  ["BU", "WH"],
] as const;

describe.each(PLACES)("a stripe of the very colour of the bench, touched $name", (place) => {
  test.each(PAIRS)("%s with %s is told whole, or is not sure", (base, stripe) => {
    const { off, reach } = place;
    const change = { stripe: place.stripe, stripeAt: place.stripeAt };
    for (let seed = SEED; seed < SEED + 2; seed++) {
      const wire = { base, stripe, bench: LOOK[stripe] };
      const seen = touched(seededRandom(seed), wire, change, { off, reach });
      const told = [seen?.base.ranked[0]?.code, seen?.tracer?.ranked[0]?.code];
      if (seen?.isSure) expect(told, `PINTRUTH_SEED=${seed}`).toEqual([base, stripe]);
    }
  });
});

test.each(["RD", "GN", "YE", "TQ", "PK"] as const)(
  "plain %s on another bench stays sure",
  (base) => {
    const wire = { base, stripe: null, bench: "#b1a996" };
    const seen = touched(seededRandom(SEED), wire, {}, { off: 0.1, reach: 0.7 });
    expect(seen?.isSure).toBe(true);
    expect(seen?.base.ranked[0]?.code).toBe(base);
  },
);
