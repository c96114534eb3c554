import { convertXyz65ToRgb } from "culori/fn";
import type { Lab } from "./colour-difference.ts";
import { linear } from "./linear-light.ts";

/** CIE 1931 X, Y, Z; 1 is the Y of an sRGB picture's own white. */
export type Xyz = readonly [x: number, y: number, z: number];

/** The white that sRGB and CIELAB are told against: CIE standard illuminant D65. */
export const D65: Xyz = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329];

/** The cone responses of Bradford's adaptation (Lam 1985, as in ICC.1 annex E). */
const BRADFORD = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
] as const;
const FROM_CONES = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
] as const;

type Matrix = readonly [Xyz, Xyz, Xyz];
const dot = (row: Xyz, of: Xyz) => row[0] * of[0] + row[1] * of[1] + row[2] * of[2];
const times = (matrix: Matrix, of: Xyz): Xyz => [
  dot(matrix[0], of),
  dot(matrix[1], of),
  dot(matrix[2], of),
];

/** XYZ of a colour in linear sRGB, 0 to 1 each (IEC 61966-2-1). */
export const xyzOfLinear = ([red, green, blue]: Xyz): Xyz => [
  0.4123907993 * red + 0.3575843394 * green + 0.1804807884 * blue,
  0.2126390059 * red + 0.7151686788 * green + 0.0721923154 * blue,
  0.0193308187 * red + 0.1191947798 * green + 0.9505321522 * blue,
];

/** From red, green and blue of an sRGB picture, 0 to 255 each. */
export const xyzOf = (red: number, green: number, blue: number): Xyz =>
  xyzOfLinear([linear(red), linear(green), linear(blue)]);

/**
 * A colour seen under `white` as it would be under D65: von Kries' rule, each cone response scaled
 * against that of the white, in Bradford's cones. The white's Y becomes 1.
 */
export function adapterFrom(white: Xyz): (colour: Xyz) => Xyz {
  const seen = times(BRADFORD, white);
  const meant = times(BRADFORD, D65);
  const gain: Xyz = [
    meant[0] / Math.max(1e-4, seen[0]),
    meant[1] / Math.max(1e-4, seen[1]),
    meant[2] / Math.max(1e-4, seen[2]),
  ];
  return (colour) => {
    const cones = times(BRADFORD, colour);
    return times(FROM_CONES, [cones[0] * gain[0], cones[1] * gain[1], cones[2] * gain[2]]);
  };
}

/** L*a*b* against D65 of X, Y, Z (CIE 15). */
export function labOf([x, y, z]: Xyz): Lab {
  const root = (share: number) =>
    share > (6 / 29) ** 3 ? Math.cbrt(share) : (share * (29 / 6) ** 2) / 3 + 4 / 29;
  const fy = root(y);
  return [116 * fy - 16, 500 * (root(x / D65[0]) - fy), 200 * (fy - root(z / D65[2]))];
}

/** X, Y, Z of L*a*b* against D65 (CIE 15). */
export function xyzOfLab([l, a, b]: Lab): Xyz {
  const fy = (l + 16) / 116;
  const back = (f: number) => (f > 6 / 29 ? f ** 3 : (3 * (6 / 29) ** 2 * (116 * f - 16)) / 116);
  return [back(fy + a / 500) * D65[0], back(fy), back(fy - b / 200) * D65[2]];
}

/** `#rrggbb` of a colour against D65, cut to what a screen can show. */
export function screenColour(colour: Lab): string {
  const [x, y, z] = xyzOfLab(colour);
  const { r, g, b } = convertXyz65ToRgb({ x, y, z });
  const byte = (share: number) =>
    Math.round(255 * Math.min(1, Math.max(0, share)))
      .toString(16)
      .padStart(2, "0");
  return `#${byte(r)}${byte(g)}${byte(b)}`;
}
