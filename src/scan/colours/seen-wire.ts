import type { Point } from "../../base/index.ts";
import type { Rgba } from "../raster.ts";
import { screenColour } from "./adaptation.ts";
import type { InsulationCode } from "./insulation.ts";
import type { PhotoWhite } from "./photo-white.ts";
import { type RankedCode, rankedCodes } from "./ranked.ts";
import { type ColourPart, twoColours } from "./two-colours.ts";
import { wireExtent } from "./wire-extent.ts";
import { profileOf, wireStrip } from "./wire-strip.ts";

/** One colour seen on a wire, with what it may be called. */
export interface SeenColour {
  /** Every code, nearest first; those worth asking about are `likely`. */
  readonly ranked: readonly RankedCode[];
  /** How many at the head of `ranked` lie so near one another that they can't be told apart: 1 or more. */
  readonly likely: number;
  /** Of the wire's visible face, 0 to 1. */
  readonly share: number;
  /** As it looks under daylight, `#rrggbb`. */
  readonly rgb: string;
}

/** What a photo shows of the wire at one spot: proposals, never more. */
export interface SeenWire {
  readonly base: SeenColour;
  /** The thin stripe; null where none is seen: on the side away from the camera there may be one. */
  readonly tracer: SeenColour | null;
  /** Whether each colour has only one likely code, under a white that can be trusted. */
  readonly isSure: boolean;
  /** Whether green and yellow share the wire so evenly that it may be `GNYE` (IEC 60445: 30 to 70 %). */
  readonly isGnye: boolean;
}

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

/**
 * The colours of the wire under a spot of a photo. `reach`: the radius of the spot in pixels, within
 * the wire and about half its breadth; the picture should go on for `STRIP_REACH` of it all round.
 * Null where the spot is too bright to tell any colour.
 */
export function seenWire(
  picture: Rgba,
  at: Point,
  reach: number,
  white: PhotoWhite,
): SeenWire | null {
  const strip = wireStrip(picture, at, reach, white.xyz);
  const extent = wireExtent(profileOf(strip), reach);
  // The outermost rows mix with what lies beside.
  const rim = Math.floor((extent.to - extent.from) * 0.12);
  const [from, to] = [(extent.from + rim) * strip.length, (extent.to - rim) * strip.length];
  const parts = twoColours(strip.lab.slice(from, to), strip.lost.slice(from, to), strip.length);
  const [broad, thin] = parts;
  if (!broad) return null;
  // The rim left out is the base's.
  const share = ((thin?.share ?? 0) * (to - from)) / (strip.length * (extent.to - extent.from));
  const base = seenColour(broad, 1 - share);
  const tracer = thin ? seenColour(thin, share) : null;
  const pair = [base, tracer].map((one) => one?.ranked[0]?.code);
  const isGnye = pair.includes("GN") && pair.includes("YE") && share >= 0.3;
  // Grey is white in shade unless somebody has pointed at a white.
  const isPlain = ({ ranked: [best], likely }: SeenColour) =>
    best !== undefined &&
    likely === 1 &&
    best.deltaE < NEAR &&
    (best.code !== "GY" || white.from === "tapped");
  const mayBeLight =
    thin !== undefined &&
    (thin.mayBeGleam || thin.colour[0] < DARK || PALE.includes(tracer?.ranked[0]?.code ?? "WH"));
  return {
    base,
    tracer,
    isSure:
      !white.isDoubtful &&
      !extent.isDoubtful &&
      !isGnye &&
      !mayBeLight &&
      isPlain(base) &&
      (tracer === null || isPlain(tracer)),
    isGnye,
  };
}

function seenColour({ colour }: ColourPart, share: number): SeenColour {
  const ranked = rankedCodes(colour);
  const best = ranked[0]?.deltaE ?? 0;
  const near = ranked.filter(({ deltaE }) => deltaE - best < NEAR_TIE).length;
  return {
    ranked,
    likely: Math.min(MOST_LIKELY, Math.max(1, near)),
    share,
    rgb: screenColour(colour),
  };
}
