import type { SKRSContext2D } from "@napi-rs/canvas";
import { type Point, seededRandom } from "../../../src/base/index.ts";
import type { Colour } from "../../../src/job/index.ts";
import { bell, hills } from "../ageing/noise.ts";
import { blankPage, drawText, INK, type Page } from "../drawing/page.ts";
import { MACHINE } from "./machine.ts";
import { X1 } from "./plug.ts";

/** Not a photograph: the demo's plug with the wires of its machine, drawn and lit by arithmetic. */
export const PLUG_PHOTO = "images/x1-wires.jpg";

const SIZE = { width: 1280, height: 960 };
const SEED = 41;
const JPEG_QUALITY = 88;
/** Pixels a millimetre, and where the middle of cavity 1 lies. */
const SCALE = 20;
const ORIGIN: Point = [448, 424];
/** Of the insulation of a wire of 1 mm², pixels. */
const RADIUS = 23;

/** How insulation of these colours is dyed, sRGB: shades of our own choice, none of a maker. */
const DYES: Partial<Record<Colour["base"], string>> = {
  RD: "#b5202b",
  WH: "#ebe7da",
  YE: "#edcb14",
  BU: "#1f55a8",
  BN: "#6d4124",
  BK: "#1b1b1d",
  GN: "#22803f",
  VT: "#6b3a8c",
};

/** Where a wire goes from its cavity: out of the picture, by the control points of a Bézier curve. */
const WAYS: Readonly<Record<string, readonly [Point, Point, Point]>> = {
  "X1:1": [
    [430, 300],
    [250, 190],
    [215, -40],
  ],
  "X1:2": [
    [560, 290],
    [470, 160],
    [455, -40],
  ],
  "X1:3": [
    [700, 290],
    [735, 170],
    [705, -40],
  ],
  "X1:4": [
    [830, 310],
    [1010, 210],
    [985, -40],
  ],
  "X1:5": [
    [440, 670],
    [330, 760],
    [290, 1000],
  ],
  "X1:6": [
    [570, 700],
    [600, 800],
    [560, 1000],
  ],
};

type Rgb = [number, number, number];

/** Linear light of a byte of sRGB, and back (IEC 61966-2-1). */
const linear = (byte: number) =>
  byte <= 10 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4;
const encoded = (light: number) =>
  255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);

const dye = (code: Colour["base"]): Rgb => {
  const hex = DYES[code];
  if (!hex) throw new Error(`no dye for ${code}`);
  return [1, 3, 5].map((at) => linear(Number.parseInt(hex.slice(at, at + 2), 16))) as Rgb;
};

const onPhoto = ([x, y]: Point): Point => [ORIGIN[0] + x * SCALE, ORIGIN[1] + y * SCALE];

/** The plug's back as a drawing in flat colours, on which the light is worked out afterwards. */
function drawPlug(page: Page): void {
  const { pen } = page;
  const outline = X1.outline;
  if (outline?.shape !== "rectangle") throw new Error("the demo's plug is a rectangle");
  const box = (fill: string, at: Point, wide: number, high: number, radius: number) => {
    const [x, y] = onPhoto(at);
    pen.fillStyle = fill;
    pen.beginPath();
    pen.roundRect(x, y, wide * SCALE, high * SCALE, radius * SCALE);
    pen.fill();
  };
  const [left, top] = outline.at;
  const { radius = 0 } = outline;
  for (const { at, width, height } of X1.keys ?? [])
    box("#3a3c40", [at[0] - width / 2, at[1] - height / 2], width, height, 0.6);
  box("#2c2e32", [left, top], outline.width, outline.height, radius);
  box("#3a3c40", [left + 1, top + 1], outline.width - 2, outline.height - 2, radius - 0.6);
  for (const cavity of X1.cavities) {
    const [x, y] = onPhoto(cavity.at);
    const disc = (fill: string, radius: number) => {
      pen.fillStyle = fill;
      pen.beginPath();
      pen.arc(x, y, radius, 0, 2 * Math.PI);
      pen.fill();
    };
    disc("#26282b", 50);
    // A seal of rubber round each wire; an unused cavity is open, or shut with a plug of rubber.
    disc(cavity.blocked ? "#6d7176" : "#55585d", 42);
    if (!cavity.blocked) disc("#101113", cavity.empty ? 30 : RADIUS + 4);
  }
  // Moulded marks are at the ends of the rows alone.
  pen.fillStyle = "#7d8085";
  for (const { mark, at } of X1.cavities) {
    const isLeft = at[0] === 0;
    if (!isLeft && at[0] !== 18) continue;
    const [x, y] = onPhoto([at[0] + (isLeft ? -3.2 : 3.2), at[1]]);
    drawText(page, mark, [x, y], { size: 30, bold: true, align: "center" });
  }
}

/** A white label on the bench: what a photo's white is told by. */
function drawLabel(pen: SKRSContext2D): void {
  pen.save();
  pen.translate(985, 770);
  pen.rotate(-0.12);
  pen.fillStyle = "#5d5850";
  pen.fillRect(-142, -76, 296, 168);
  pen.fillStyle = "#f1efe9";
  pen.fillRect(-150, -85, 300, 170);
  pen.restore();
}

/** Where a wire runs, in steps of one to two pixels. */
function wayOf(from: Point, [a, b, to]: readonly [Point, Point, Point]): readonly Point[] {
  const count = 400;
  return Array.from({ length: count + 1 }, (_, n): Point => {
    const t = n / count;
    const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t ** 2 * (1 - t), t ** 3];
    return [
      p * from[0] + q * a[0] + r * b[0] + s * to[0],
      p * from[1] + q * a[1] + r * b[1] + s * to[1],
    ];
  });
}

/** The middle of the wire in a cavity from there to the edge, pixels of the picture. */
export function wayOfWire(cavity: string): readonly Point[] {
  const from = X1.cavities.find(({ mark }) => cavity === `${X1.id}:${mark}`);
  const way = WAYS[cavity];
  if (!from || !way) throw new Error(`no wire is drawn in ${cavity}`);
  return wayOf(onPhoto(from.at), way);
}

/** Light of every pixel before the camera, three channels. */
type Light = Float32Array;

/** Lays a round wire over what is there, with the shadow that it casts. */
function layWire(light: Light, way: readonly Point[], { base, tracer }: Colour): void {
  const [own, stripe] = [dye(base), tracer === undefined ? null : dye(tracer)];
  const shadow = 14;
  const reach = RADIUS + shadow + 12;
  const pixels = SIZE.width * SIZE.height;
  const away = new Float32Array(pixels).fill(reach);
  const across = new Float32Array(pixels);
  const along = new Uint16Array(pixels);
  way.forEach(([x, y], step) => {
    const [nextX, nextY] = way[step + 1] ?? [x, y];
    const [beforeX, beforeY] = way[Math.max(0, step - 1)] ?? [x, y];
    const [dx, dy] = [nextX - beforeX, nextY - beforeY];
    for (let row = Math.ceil(y - reach); row <= y + reach; row++) {
      if (row < 0 || row >= SIZE.height) continue;
      for (let column = Math.ceil(x - reach); column <= x + reach; column++) {
        if (column < 0 || column >= SIZE.width) continue;
        const off = Math.hypot(column - x, row - y);
        const at = row * SIZE.width + column;
        if (off >= (away[at] as number)) continue;
        const side = (column - x) * dy - (row - y) * dx < 0 ? -off : off;
        away[at] = off;
        across[at] = Math.max(-1, Math.min(1, side / RADIUS));
        along[at] = step;
      }
    }
  });
  for (let at = 0; at < pixels; at++) {
    const off = away[at] as number;
    if (off >= reach) continue;
    const cover = Math.min(1, Math.max(0, RADIUS + 0.5 - off));
    const side = across[at] as number;
    const shade = 0.38 + 0.62 * Math.sqrt(1 - side * side);
    // The tracer swings round the wire as that was wound.
    const round = Math.asin(side) - 0.25 - 0.5 * Math.sin((along[at] as number) / 90);
    const dyed = Math.min(1, Math.max(0, 0.5 + (0.3 - Math.abs(round)) * RADIUS));
    // The ring of lamps about the lens, seen in the skin of the wire as one soft line on either side.
    const gleam =
      0.055 * (Math.exp(-(((side - 0.5) / 0.1) ** 2)) + Math.exp(-(((side + 0.5) / 0.1) ** 2)));
    const dark = 0.62 * Math.exp(-((Math.max(0, off - RADIUS) / shadow) ** 2));
    for (let c = 0; c < 3; c++) {
      const plain = own[c] as number;
      const skin = stripe ? plain + ((stripe[c] as number) - plain) * dyed : plain;
      const under = (light[3 * at + c] as number) * (1 - dark);
      light[3 * at + c] = under * (1 - cover) + (skin * shade + gleam) * cover;
    }
  }
}

/** The picture as JPEG bytes: the same ones on the same computer. */
export function plugPhoto(): Uint8Array {
  const { width, height } = SIZE;
  const page = blankPage(width, height);
  const { pen, canvas } = page;
  pen.fillStyle = "#857d70";
  pen.fillRect(0, 0, width, height);
  drawLabel(pen);
  pen.fillStyle = INK;
  drawText(page, "X1 · sweeper 14", [986, 778], {
    size: 30,
    bold: true,
    align: "center",
    turn: -6.9,
  });
  drawPlug(page);
  const flat = pen.getImageData(0, 0, width, height);
  const light: Light = new Float32Array(3 * width * height);
  for (let at = 0; at < width * height; at++)
    for (let c = 0; c < 3; c++) light[3 * at + c] = linear(flat.data[4 * at + c] ?? 0);
  for (const { cavity, colour } of MACHINE.wires) {
    if (colour) layWire(light, wayOfWire(cavity), colour);
  }
  expose(light, flat.data);
  pen.putImageData(flat, 0, 0);
  return new Uint8Array(canvas.toBuffer("image/jpeg", JPEG_QUALITY));
}

/** The workshop's lamp is a little warm, brightest in the middle; the camera leaves it so, and adds its noise. */
function expose(light: Light, data: Uint8ClampedArray): void {
  const random = seededRandom(SEED);
  const { width, height } = SIZE;
  const grain = hills(SEED + 1, 5);
  const dirt = hills(SEED + 2, 70);
  const lamp: Rgb = [1, 0.9, 0.74];
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at++) {
      const off = ((x - 0.47 * width) ** 2 + (y - 0.45 * height) ** 2) / width ** 2;
      const by = 0.98 * (1 - 0.75 * off) * (1 + 0.03 * grain(x, y) + 0.04 * dirt(x, y));
      for (let c = 0; c < 3; c++) {
        const seen = encoded((light[3 * at + c] as number) * by * (lamp[c] as number));
        data[4 * at + c] = seen + bell(random) * 2.2;
      }
    }
}
