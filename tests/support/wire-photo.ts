import type { Rgba } from "../../src/scan/raster.ts";

/** A light by its chromaticity x, y. */
export type Chromaticity = readonly [x: number, y: number];

/** A photo of wires lying beside one another over a bench, made by arithmetic of its own. */
export interface WirePhoto {
  readonly width: number;
  readonly height: number;
  /** Of each wire its base and its stripe, `#rrggbb` in white light; null: no stripe. */
  readonly wires: readonly { readonly base: string; readonly stripe: string | null }[];
  readonly light: Chromaticity;
  /** How bright a perfectly white surface comes out, 1: just full. */
  readonly exposure: number;
  /** Deviation of a camera's noise, bytes. */
  readonly noise: number;
  readonly bench: string;
  /** Whether a white card lies in the corner. */
  readonly card: boolean;
  /** Radius of a wire and the distance from one's middle to the next, pixels. */
  readonly radius: number;
  readonly pitch: number;
  /** How much darker a round wire is at its sides, 0 to 1. */
  readonly shade: number;
  /** Light thrown back along a wire: a line with hard edges, or one that fades to both sides. */
  readonly gleam: "none" | "hard" | "soft";
  /** Where the light comes from: degrees off the camera, to the side of a wire; null: from the camera. */
  readonly sun: number | null;
  /** Breadth of a stripe, radii of the wire. */
  readonly stripe: number;
  /** Where its middle lies, radii of the wire off the wire's middle. */
  readonly stripeAt: number;
  /** Pixels along the wire in which the stripe winds round it once; null: it runs straight. */
  readonly twist: number | null;
  /** Pixels from the middle of the photo to where a wound stripe passes the middle of the wire. */
  readonly phase: number;
  /** Of the wires against the rows, degrees. */
  readonly turn: number;
}

export const WIRE_PHOTO: WirePhoto = {
  width: 210,
  height: 160,
  wires: [],
  light: [0.3127, 0.329],
  exposure: 0.85,
  noise: 2.5,
  bench: "#8f8d88",
  card: true,
  radius: 13,
  pitch: 40,
  shade: 0.6,
  gleam: "hard",
  sun: null,
  stripe: 0.48,
  stripeAt: 0.1,
  twist: null,
  phase: 0,
  turn: 7,
};

/** Where the middle of a wire lies halfway along the photo. */
export function middleOfWire(photo: WirePhoto, index: number): readonly [number, number] {
  const angle = (photo.turn * Math.PI) / 180;
  const across = (index - (photo.wires.length - 1) / 2) * photo.pitch;
  return [photo.width / 2 - across * Math.sin(angle), photo.height / 2 + across * Math.cos(angle)];
}

/** Linear light of a byte of sRGB (IEC 61966-2-1). */
const linear = (byte: number) =>
  byte <= 10 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4;

const channels = (rgb: string) =>
  [1, 3, 5].map((at) => linear(Number.parseInt(rgb.slice(at, at + 2), 16))) as [
    number,
    number,
    number,
  ];

/** Red, green and blue of a light in linear sRGB, its brightest 1: as a camera that balances nothing sees it. */
export function lightOf([x, y]: Chromaticity): [number, number, number] {
  const [X, Y, Z] = [x / y, 1, (1 - x - y) / y];
  // The inverse of the matrix of IEC 61966-2-1.
  const rgb = [
    3.2406 * X - 1.5372 * Y - 0.4986 * Z,
    -0.9689 * X + 1.8758 * Y + 0.0415 * Z,
    0.0557 * X - 0.204 * Y + 1.057 * Z,
  ];
  const most = Math.max(...rgb);
  return rgb.map((one) => Math.max(0, one) / most) as [number, number, number];
}

function isOnStripe({ stripe, stripeAt, twist, phase }: WirePhoto, side: number, along: number) {
  if (twist === null) return Math.abs(side - stripeAt) < stripe / 2;
  // Round the wire: the stripe is as broad there as it looks when it faces the camera.
  const round = Math.asin(side) - (2 * Math.PI * (along - phase)) / twist;
  const off = round - 2 * Math.PI * Math.round(round / (2 * Math.PI));
  return Math.abs(off) < Math.asin(Math.min(1, stripe / 2));
}

/** Share of the light on a round wire, `side` from -1 to 1 across it. */
function lightOn({ shade, sun }: WirePhoto, side: number): number {
  const facing = Math.sqrt(1 - side * side);
  if (sun === null) return 1 - shade * (1 - facing);
  const angle = (sun * Math.PI) / 180;
  // A surface in the light by Lambert's cosine, the rest by what comes from all sides.
  return 1 - shade + shade * Math.max(0, Math.cos(angle) * facing + Math.sin(angle) * side);
}

function shineOn({ gleam }: WirePhoto, side: number): number {
  if (gleam === "none") return 0;
  const off = Math.abs(side + 0.45);
  return gleam === "hard" ? Number(off < 0.07) : 1.4 * Math.exp(-((off / 0.12) ** 2));
}

/** The light multiplies each channel of the camera: not the rule by which it is taken away again. */
export function wirePhoto(photo: WirePhoto, random: () => number): Rgba {
  const { width, height, wires, radius, pitch } = photo;
  const light = lightOf(photo.light).map((one) => one * photo.exposure);
  const angle = (photo.turn * Math.PI) / 180;
  const bench = channels(photo.bench);
  const card = channels("#efefef");
  const looks = wires.map(({ base, stripe }) => ({
    base: channels(base),
    stripe: stripe === null ? null : channels(stripe),
  }));
  const data = new Uint8ClampedArray(4 * width * height);
  // Two of a bell curve from two even numbers (Box, Muller 1958).
  const noise = () =>
    photo.noise * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += 4) {
      const dx = x - width / 2;
      const dy = y - height / 2;
      const across = -dx * Math.sin(angle) + dy * Math.cos(angle);
      const index = Math.round(across / pitch + (wires.length - 1) / 2);
      const off = across - (index - (wires.length - 1) / 2) * pitch;
      const look = looks[index];
      let seen = bench.map((one) => one * (look && Math.abs(off) < radius + 4 ? 0.45 : 1));
      if (photo.card && x > width - 44 && y > height - 36) seen = [...card];
      else if (look && Math.abs(off) < radius) {
        const side = off / radius;
        const along = dx * Math.cos(angle) + dy * Math.sin(angle);
        const own = look.stripe && isOnStripe(photo, side, along) ? look.stripe : look.base;
        const lit = lightOn(photo, side);
        const shine = shineOn(photo, side);
        seen = own.map((one) => one * lit * (1 - 0.6 * shine) + 0.5 * shine);
      }
      for (let i = 0; i < 3; i++) {
        const linearLight = (seen[i] as number) * (light[i] as number);
        const byte =
          linearLight <= 0.0031308
            ? 12.92 * linearLight
            : 1.055 * Math.max(0, linearLight) ** (1 / 2.4) - 0.055;
        data[at + i] = 255 * byte + noise();
      }
      data[at + 3] = 255;
    }
  return { width, height, data };
}
