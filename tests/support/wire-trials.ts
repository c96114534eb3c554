import { createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import type { Point, Random } from "../../src/base/index.ts";
import {
  estimateWhite,
  finished,
  type Rgba,
  type SeenColour,
  type SeenWire,
  seenWire,
  whiteAt,
} from "../../src/scan/index.ts";
import {
  type Chromaticity,
  middleOfWire,
  WIRE_PHOTO,
  type WirePhoto,
  wirePhoto,
} from "./wire-photo.ts";

/**
 * Chromaticities of CIE 15:2004, 2° observer: D65 is daylight, A a filament lamp of 2856 K, F2 and F11
 * are fluorescent lamps.
 */
export const LIGHTS = {
  D65: [0.31272, 0.32903],
  A: [0.44758, 0.40745],
  F2: [0.37208, 0.37529],
  F11: [0.38052, 0.37713],
} as const satisfies Readonly<Record<string, Chromaticity>>;

/** Insulation as it might be by its code: tones of the tests' own, none of them among the reference shades. */
export const LOOK = {
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
} as const;
export type Code = keyof typeof LOOK;
const CODES = Object.keys(LOOK) as Code[];

export const TRIAL_PHOTO = {
  ...WIRE_PHOTO,
  width: 340,
  height: 260,
  radius: 24,
  pitch: 68,
  gleam: "none",
} as const;
/** The middle of the white card on it. */
export const CARD = [318, 242] as const;

/** What is drawn, by name: each a change to the photo of a wire of one colour. */
export const KINDS: Readonly<Record<string, { isStriped: boolean; change: Partial<WirePhoto> }>> = {
  "one colour": { isStriped: false, change: {} },
  "one colour, shining": { isStriped: false, change: { gleam: "soft" } },
  "one colour, lit from the side": { isStriped: false, change: { sun: 60, shade: 0.8 } },
  "broad stripe": { isStriped: true, change: { stripe: 0.6 } },
  "thin stripe": { isStriped: true, change: { stripe: 0.25 } },
  "stripe at the side": { isStriped: true, change: { stripe: 0.35, stripeAt: 0.65 } },
  "wound stripe": { isStriped: true, change: { stripe: 0.7, twist: 150 } },
  "stripe, shining": { isStriped: true, change: { gleam: "soft", stripe: 0.45, stripeAt: 0.3 } },
  "stripe, lit from the side": { isStriped: true, change: { stripe: 0.45, sun: 60, shade: 0.8 } },
};

/** Radius of the ring that is put on the wire, radii of the wire. */
export interface Ring {
  readonly least: number;
  readonly most: number;
}

/** As a small screen shows a photo whole, and as a large one does. */
export const RINGS = {
  large: { least: 0.6, most: 0.95 },
  small: { least: 0.25, most: 0.45 },
} as const satisfies Readonly<Record<string, Ring>>;

/** A drawn wire and what is said of it. */
export interface WireTrial {
  readonly photo: WirePhoto;
  readonly base: Code;
  readonly tracer: Code | null;
  readonly seen: SeenWire | null;
}

/** Draws one wire between two others, squeezes it through JPEG and taps it anywhere on its face. */
export async function wireTrial(
  random: Random,
  kind: string,
  light: Chromaticity,
  ring: Ring,
): Promise<WireTrial> {
  const { isStriped, change } = KINDS[kind] ?? { isStriped: false, change: {} };
  const any = () => CODES[random.below(CODES.length)] as Code;
  const base = any();
  const others = CODES.filter((code) => code !== base);
  const tracer = isStriped ? (others[random.below(others.length)] as Code) : null;
  const beside = () => ({ base: LOOK[any()], stripe: null });
  const photo: WirePhoto = {
    ...TRIAL_PHOTO,
    bench: random.chance(0.5) ? "#b1a996" : "#6d7377",
    light,
    exposure: 0.6 + 0.3 * random.next(),
    noise: 1 + 3 * random.next(),
    turn: 50 * random.next() - 25,
    phase: 150 * random.next(),
    wires: [beside(), { base: LOOK[base], stripe: tracer && LOOK[tracer] }, beside()],
    ...change,
  };
  const picture = await squeezed(wirePhoto(photo, random.next), 60 + random.below(35));
  const reach = photo.radius * (ring.least + (ring.most - ring.least) * random.next());
  const at = placeOnWire(photo, (2 * random.next() - 1) * (photo.radius - reach));
  const white = (random.chance(0.5) ? whiteAt(picture, CARD, 8) : null) ?? estimateWhite(picture);
  return { photo, base, tracer, seen: finished(seenWire(picture, at, reach, white)) };
}

/** So many pixels beside the middle of the wire between the two others. */
export function placeOnWire(photo: WirePhoto, off: number): Point {
  const [x, y] = middleOfWire(photo, 1);
  const angle = (photo.turn * Math.PI) / 180;
  return [x - off * Math.sin(angle), y + off * Math.cos(angle)];
}

async function squeezed(picture: Rgba, quality: number): Promise<Rgba> {
  const { width, height, data } = picture;
  const canvas = createCanvas(width, height);
  const draw = canvas.getContext("2d");
  draw.putImageData(new ImageData(new Uint8ClampedArray(data), width, height), 0, 0);
  draw.drawImage(await loadImage(canvas.toBuffer("image/jpeg", quality)), 0, 0);
  return {
    width,
    height,
    data: new Uint8ClampedArray(draw.getImageData(0, 0, width, height).data),
  };
}

/** What is said of drawn wires, counted. */
export interface WireScore {
  readonly count: number;
  /** Base and tracer, or that there is none, are what is offered first. */
  readonly first: number;
  /** Each is among the first three offered. */
  readonly firstThree: number;
  /** Without any doubt. */
  readonly sure: number;
  readonly wrongAndSure: number;
}

export function scoreOf(trials: readonly WireTrial[]): WireScore {
  const score = { count: trials.length, first: 0, firstThree: 0, sure: 0, wrongAndSure: 0 };
  for (const { base, tracer, seen } of trials) {
    if (!seen) continue;
    const isAmong = (most: number) => {
      const among = (colour: SeenColour | null, code: Code | null) =>
        colour?.ranked.slice(0, most).some((one) => one.code === code) ?? false;
      if (!among(seen.base, base)) return false;
      if (most === 1 || seen.isSure)
        return seen.tracer ? among(seen.tracer, tracer) : tracer === null;
      // "None" stands beside the codes wherever it is not sure.
      return tracer === null || among(seen.tracer, tracer) || among(seen.maybe, tracer);
    };
    if (isAmong(1)) score.first++;
    if (isAmong(3)) score.firstThree++;
    if (seen.isSure) score.sure++;
    if (seen.isSure && !isAmong(1)) score.wrongAndSure++;
  }
  return score;
}
