import { createCanvas, ImageData, loadImage } from "@napi-rs/canvas";
import type { Point, Random } from "../../../src/base/index.ts";
import type { Rgba } from "../../../src/scan/raster.ts";

/** What a phone or a copier does to a page. */
export interface Harm {
  /** Degrees that the page lies askew. */
  readonly skew: number;
  /** Radius of the blur in pixels of the picture. */
  readonly blur: number;
  /** Standard deviation of the noise, in steps of 255. */
  readonly noise: number;
  /** How much darker the darkest place of the paper is, 0 to 1. */
  readonly shade: number;
  /** JPEG quality, 1 to 100; 0 for none. */
  readonly jpeg: number;
  /** Share of the page's ink in spots that were not printed. */
  readonly dropouts: number;
  /** Ink is this grey, 0 black. */
  readonly fade: number;
}

export const NO_HARM: Harm = {
  skew: 0,
  blur: 0,
  noise: 0,
  shade: 0,
  jpeg: 0,
  dropouts: 0,
  fade: 0,
};

/** From none (0) to what is barely legible (1). */
export function randomHarm(random: Random, level: number): Harm {
  const some = () => level * random.next();
  return {
    skew: (random.next() - 0.5) * 4 * level,
    blur: 1.4 * some(),
    noise: 24 * some(),
    shade: 0.6 * some(),
    jpeg: level === 0 ? 0 : Math.round(95 - 55 * some()),
    dropouts: 0.012 * some(),
    fade: 110 * some(),
  };
}

export interface Harmed {
  readonly picture: Rgba;
  /** Where a point of the drawn page is found in the picture. */
  readonly moved: (point: Point) => Point;
}

export async function harmed(
  random: Random,
  page: Rgba,
  harm: Harm,
  line: number,
): Promise<Harmed> {
  const source = createCanvas(page.width, page.height);
  const pen = source.getContext("2d");
  pen.putImageData(
    new ImageData(page.data.slice() as Uint8ClampedArray<ArrayBuffer>, page.width, page.height),
    0,
    0,
  );
  if (harm.dropouts > 0) dropOut(pen, random, page, harm.dropouts, line);
  const angle = (harm.skew * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const width = Math.ceil(page.width * Math.abs(cos) + page.height * Math.abs(sin));
  const height = Math.ceil(page.width * Math.abs(sin) + page.height * Math.abs(cos));
  const moved = ([x, y]: Point): Point => {
    const [dx, dy] = [x - page.width / 2, y - page.height / 2];
    return [width / 2 + dx * cos - dy * sin, height / 2 + dx * sin + dy * cos];
  };
  const canvas = createCanvas(width, height);
  const out = canvas.getContext("2d");
  out.fillStyle = "white";
  out.fillRect(0, 0, width, height);
  if (harm.blur > 0) out.filter = `blur(${harm.blur}px)`;
  out.setTransform(cos, sin, -sin, cos, ...moved([0, 0]));
  out.drawImage(source, 0, 0);
  out.setTransform(1, 0, 0, 1, 0, 0);
  out.filter = "none";
  const image = out.getImageData(0, 0, width, height);
  tone(image.data, width, height, random, harm);
  if (harm.jpeg === 0) return { picture: { width, height, data: image.data }, moved };
  out.putImageData(image, 0, 0);
  const loaded = await loadImage(canvas.toBuffer("image/jpeg", harm.jpeg));
  out.drawImage(loaded, 0, 0);
  return { picture: { width, height, data: out.getImageData(0, 0, width, height).data }, moved };
}

/** White specks about a line wide, as toner that did not hold. */
function dropOut(
  pen: ReturnType<ReturnType<typeof createCanvas>["getContext"]>,
  random: Random,
  { width, height }: Rgba,
  share: number,
  line: number,
): void {
  pen.fillStyle = "white";
  const area = line * line * 1.2;
  for (let n = 0; n < (share * width * height) / area; n++) {
    const radius = line * (0.2 + 0.6 * random.next());
    pen.beginPath();
    pen.arc(random.next() * width, random.next() * height, radius, 0, 2 * Math.PI);
    pen.fill();
  }
}

function tone(
  data: Uint8ClampedArray,
  width: number,
  height: number,
  random: Random,
  harm: Harm,
): void {
  const [sx, sy] = [random.next(), random.next()];
  const reach = Math.hypot(width, height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const light = 1 - harm.shade * (Math.hypot(x - sx * width, y - sy * height) / reach);
      // The sum of four even chances is near enough to a bell curve; its deviation is 0.577.
      const noise = random.next() + random.next() + random.next() + random.next() - 2;
      for (let c = 0; c < 3; c++) {
        const ink = harm.fade + ((255 - harm.fade) * (data[at + c] as number)) / 255;
        data[at + c] = ink * light + (noise * harm.noise) / 0.577;
      }
    }
  }
}
