import type { Point, Random } from "../../../src/base/index.ts";
import { apply, homographyBetween, type Quad } from "../../../src/scan/homography.ts";
import type { Rgba } from "../../../src/scan/raster.ts";

export interface Photo {
  readonly width: number;
  readonly height: number;
  /** Where the page's corners are seen, before the lens bows them. */
  readonly corners: Quad;
  /** Grey of the table, 0 black. */
  readonly ground: number;
  /** Standard deviation of the noise, in steps of 255. */
  readonly noise: number;
  /** Where a point of the photo would lie without the lens's bow. */
  readonly unbowed?: (point: Point) => Point;
}

/** A page as a camera shows it that stands askew over a table: four samples a pixel, none between. */
export function photographed(random: Random, page: Rgba, photo: Photo): Rgba {
  const { width, height, ground, noise, unbowed } = photo;
  const back = homographyBetween(photo.corners, edgesOf(page));
  if (!back) throw new Error("corners on a line");
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at += 4) {
      let [red, green, blue] = [0, 0, 0];
      for (let sample = 0; sample < 4; sample++) {
        const seen: Point = [x - 0.25 + (sample & 1) / 2, y - 0.25 + (sample >> 1) / 2];
        const [u, v] = apply(back, unbowed ? unbowed(seen) : seen);
        const isOn = u >= 0 && v >= 0 && u < page.width && v < page.height;
        const from = 4 * (Math.floor(v) * page.width + Math.floor(u));
        red += isOn ? PAPER * (page.data[from] as number) : ground;
        green += isOn ? PAPER * (page.data[from + 1] as number) : ground;
        blue += isOn ? PAPER * (page.data[from + 2] as number) : ground;
      }
      const grain =
        (noise * (random.next() + random.next() + random.next() + random.next() - 2)) / 0.577;
      data[at] = red / 4 + grain;
      data[at + 1] = green / 4 + grain;
      data[at + 2] = blue / 4 + grain;
      data[at + 3] = 255;
    }
  }
  return { width, height, data };
}

/** The corners of a page's outermost pixels' outer edges. */
export const edgesOf = ({ width, height }: Rgba): Quad => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** The largest distance between a corner and the same of another page. */
export const cornersApart = (some: Quad, others: Quad): number =>
  Math.max(
    ...some.map(([x, y], n) => {
      const [otherX, otherY] = others[n] as Point;
      return Math.hypot(x - otherX, y - otherY);
    }),
  );

/** White paper is not quite as bright as a photo can show. */
const PAPER = 0.92;

/** Corners of a page that fills about so much of a photo, each moved about at random. */
export function looseCorners(random: Random, width: number, height: number, share: number): Quad {
  const inset = (1 - share) / 2;
  const by = () => (random.next() - 0.5) * 1.6 * inset;
  const corner = (x: number, y: number): Point => [
    width * (x === 0 ? inset + by() : 1 - inset + by()),
    height * (y === 0 ? inset + by() : 1 - inset + by()),
  ];
  return [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
}
