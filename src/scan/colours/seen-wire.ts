import type { Point } from "../../base/index.ts";
import type { Rgba } from "../raster.ts";
import type { Sliced } from "../sliced.ts";
import { screenColour } from "./adaptation.ts";
import { colourSampler } from "./colour-sampler.ts";
import type { InsulationCode } from "./insulation.ts";
import type { PhotoWhite } from "./photo-white.ts";
import { type RankedCode, rankedCodes } from "./ranked.ts";
import { wireExtent } from "./wire-extent.ts";
import { type ColourPart, wireFace } from "./wire-face.ts";
import { wireStrip } from "./wire-strip.ts";
import { GRAIN, profileAcross, ROOM, surroundingsOf, wireDirection } from "./wire-surroundings.ts";

/** One colour seen on a wire, with what it may be called. */
export interface SeenColour {
  /** Every code that it may be, nearest first; those worth asking about are `likely`. */
  readonly ranked: readonly RankedCode[];
  /** How many at the head of `ranked` lie so near one another that they can't be told apart: 1 or more. */
  readonly likely: number;
  /** Of the wire's visible face, 0 to 1. */
  readonly share: number;
  /** As it looks under daylight, `#rrggbb`. */
  readonly rgb: string;
}

/**
 * Why nothing is sure: the photo's white may be wrong; green and yellow in like shares may be the one
 * code `GNYE`; two colours in like shares may be either way round; several codes lie near; a line may be
 * a stripe or only light and shade; a stripe may lie beside what could be told to be the wire.
 */
export type ColourDoubt = "white" | "gnye" | "halves" | "near" | "light" | "beside";

/** What a photo shows of the wire at one spot: proposals, never more. */
export interface SeenWire {
  readonly base: SeenColour;
  /** The stripe; null where none is seen: on the side away from the camera there may be one. */
  readonly tracer: SeenColour | null;
  /** A line that is likelier a gleam or a shaded side than a stripe, but may be one; null: none seen. */
  readonly maybe: SeenColour | null;
  /** Whether there is no doubt at all: only then may anything stand chosen beforehand. */
  readonly isSure: boolean;
  /** The gravest doubt; null when sure. */
  readonly doubt: ColourDoubt | null;
  /** Whether green and yellow share the wire so evenly that it may be `GNYE` (IEC 60445: 30 to 70 %). */
  readonly isGnye: boolean;
}

/** How far the picture should reach around a spot, in its radii. */
export const SPOT_ROOM = ROOM + 1;

/** CIEDE2000 within which of the nearest another code may as well be meant ... */
const NEAR_TIE = 6;
/** ... and farther than which no code is near at all. */
const NEAR = 13;
/** Runners-up worth a button. */
const MOST_LIKELY = 4;
/** Lightness under which a stripe may be a shadow. */
const DARK = 22;
/** What a gleam along a wire looks like. */
const PALE: readonly InsulationCode[] = ["WH", "GY"];
/** Share from which on a stripe may as well be the base. */
const HALF = 0.36;

/**
 * The colours of the wire under a spot of a photo. `reach`: the radius of the spot in pixels, within the
 * wire; the picture should go on for `SPOT_ROOM` of it all round, for the wire is looked at as a whole.
 * Null where the spot is too bright to tell any colour.
 */
export function* seenWire(
  picture: Rgba,
  at: Point,
  reach: number,
  white: PhotoWhite,
): Sliced<SeenWire | null> {
  const coarse = colourSampler(picture, white.xyz, reach / GRAIN);
  const around = surroundingsOf(coarse, at, reach);
  yield 0.3;
  const angle = wireDirection(around);
  yield 0.4;
  const extent = wireExtent(profileAcross(around, angle));
  yield 0.5;
  const pixels = reach / GRAIN;
  const half = ((extent.to - extent.from) / 2) * pixels;
  const off = ((extent.to - 1 + extent.from) / 2 - ROOM * GRAIN) * pixels;
  const place = {
    at: [at[0] - off * Math.sin(angle), at[1] + off * Math.cos(angle)] as const,
    angle,
    half,
  };
  const fine = colourSampler(picture, white.xyz, half / 14);
  const strip = wireStrip(fine, place, ROOM * reach);
  yield 0.7;
  const face = wireFace(strip);
  if (!face) return null;
  yield 0.9;
  const base = seenColour(face.base);
  const own = base.ranked[0]?.code;
  const tracer = face.stripe && seenColour(face.stripe, own);
  const maybe = face.maybe && seenColour(face.maybe, own);
  const pair = [base, tracer].map((one) => one?.ranked[0]?.code);
  const share = tracer?.share ?? 0;
  const isGnye = pair.includes("GN") && pair.includes("YE") && share >= 0.3;
  // Grey is white in shade unless somebody has pointed at a white.
  const isPlain = ({ ranked: [best], likely }: SeenColour) =>
    best !== undefined &&
    likely === 1 &&
    best.deltaE < NEAR &&
    (best.code !== "GY" || white.from === "tapped");
  const mayBeLight =
    maybe !== null ||
    face.isUneven ||
    (face.stripe !== null &&
      (face.stripe.colour[0] < DARK || PALE.includes(tracer?.ranked[0]?.code ?? "WH")));
  const doubts: readonly (readonly [ColourDoubt, boolean])[] = [
    ["white", white.isDoubtful],
    ["gnye", isGnye],
    ["beside", !extent.isCertain || !strip.isLong],
    ["light", mayBeLight],
    ["halves", share >= HALF],
    ["near", !isPlain(base) || (tracer !== null && !isPlain(tracer))],
  ];
  const doubt = doubts.find(([, is]) => is)?.[0] ?? null;
  return { base, tracer, maybe, isSure: doubt === null, doubt, isGnye };
}

/** A stripe is never called what its base is. */
function seenColour({ colour, share }: ColourPart, except?: InsulationCode): SeenColour {
  const ranked = rankedCodes(colour).filter(({ code }) => code !== except);
  const best = ranked[0]?.deltaE ?? 0;
  const near = ranked.filter(({ deltaE }) => deltaE - best < NEAR_TIE).length;
  return {
    ranked,
    likely: Math.min(MOST_LIKELY, Math.max(1, near)),
    share,
    rgb: screenColour(colour),
  };
}
