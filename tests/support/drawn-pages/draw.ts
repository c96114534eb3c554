import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import type { Point, Random } from "../../../src/base/index.ts";
import type { Rgba } from "../../../src/scan/raster.ts";
import type { MadeNet, MadePage, Place } from "./lattice.ts";
import type { Style } from "./style.ts";

export interface DrawnPage {
  readonly picture: Rgba;
  /** Where each terminal is drawn, in pixels of the picture. */
  readonly terminals: Readonly<Record<string, Point>>;
  /** The boxes of the parts: left, top, right, bottom. */
  readonly parts: readonly (readonly [number, number, number, number])[];
  /** Pixels from the picture's corner to the first place of the lattice, and between two places. */
  readonly origin: Point;
  readonly pitch: number;
}

/** Draws a made page as a plotter would, at so many dots an inch. */
export function drawPage(random: Random, page: MadePage, style: Style, dpi: number): DrawnPage {
  const pixels = dpi / 25.4;
  const pitch = style.pitch * pixels;
  const line = Math.max(1, style.line * pixels);
  const width = Math.round((page.columns + 1) * pitch);
  const height = Math.round((page.rows + 1) * pitch);
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  // Not on whole pixels: a scanner does not know where they are.
  const shift: Point = [random.next(), random.next()];
  const place = ([x, y]: Place): Point => [(x + 1) * pitch + shift[0], (y + 1) * pitch + shift[1]];
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.strokeStyle = pen.fillStyle = "black";
  pen.lineWidth = line;
  for (const part of page.parts) {
    const [left, top] = place([part.left, part.top]);
    const [right, bottom] = place([part.right, part.bottom]);
    pen.strokeRect(left, top, right - left, bottom - top);
    if (style.words) writeIn(pen, random, [left, top, right, bottom], pitch);
  }
  const crossings = new Set(page.crossings.map(String));
  page.nets.forEach((net, n) => {
    pen.strokeStyle = pen.fillStyle = style.inks[n % style.inks.length] as string;
    const wide = n % 4 === 3 ? line * style.thick : line;
    drawNet(pen, random, net, style, place, pitch, wide, crossings);
  });
  pen.strokeStyle = pen.fillStyle = "black";
  if (style.words)
    writeBeside(pen, random, page, place, pitch, line, style.jumps ? crossings : new Set());
  if (style.wordsOnLines) writeOn(pen, random, page, place, pitch);
  const { data } = pen.getImageData(0, 0, width, height);
  return {
    picture: { width, height, data },
    terminals: Object.fromEntries(
      page.nets.flatMap(({ terminals }) => terminals.map(({ name, at }) => [name, place(at)])),
    ),
    parts: page.parts.map(({ left, top, right, bottom }) => [
      ...place([left, top]),
      ...place([right, bottom]),
    ]),
    origin: place([0, 0]),
    pitch,
  };
}

function drawNet(
  pen: SKRSContext2D,
  random: Random,
  net: MadeNet,
  style: Style,
  place: (at: Place) => Point,
  pitch: number,
  line: number,
  crossings: ReadonlySet<string>,
): void {
  const ways = new Map<string, { at: Place; to: Place[] }>();
  for (const [a, b] of net.steps) {
    for (const [at, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const known = ways.get(String(at)) ?? { at, to: [] };
      known.to.push(to);
      ways.set(String(at), known);
    }
  }
  pen.lineWidth = line;
  const radius = Math.min(pitch * 0.32, Math.max(3 * line, pitch * 0.25));
  const hop = (at: Place, other: Place) =>
    style.jumps && crossings.has(String(at)) && at[1] === other[1];
  const isCorner = ({ at, to }: { at: Place; to: Place[] }) =>
    to.length === 2 &&
    to.every(([x, y]) => x !== 2 * at[0] - (to[0]?.[0] ?? 0) || y !== at[1]) &&
    (to[0] as Place)[0] !== (to[1] as Place)[0] &&
    (to[0] as Place)[1] !== (to[1] as Place)[1];
  const bend = style.rounding * pitch;
  for (const [a, b] of net.steps) {
    let [from, to] = [place(a), place(b)];
    const short = (at: Place, other: Place) => {
      if (hop(at, other)) return radius;
      const way = ways.get(String(at));
      return way && bend > 0 && isCorner(way) ? bend : 0;
    };
    const [cutA, cutB] = [short(a, b), short(b, a)];
    const along: Point = [Math.sign(to[0] - from[0]), Math.sign(to[1] - from[1])];
    from = [from[0] + along[0] * cutA, from[1] + along[1] * cutA];
    to = [to[0] - along[0] * cutB, to[1] - along[1] * cutB];
    pen.lineCap = cutA + cutB > 0 ? "butt" : "square";
    pen.beginPath();
    pen.moveTo(...from);
    pen.lineTo(...to);
    pen.stroke();
  }
  pen.lineCap = "butt";
  for (const way of ways.values()) {
    const [x, y] = place(way.at);
    if (way.to.length === 2 && way.to.every((to) => hop(way.at, to))) {
      pen.beginPath();
      pen.arc(x, y, radius, Math.PI, 0);
      pen.stroke();
    } else if (bend > 0 && isCorner(way)) {
      const [first, second] = way.to as [Place, Place];
      const end = (to: Place): Point => [
        x + Math.sign(to[0] - way.at[0]) * bend,
        y + Math.sign(to[1] - way.at[1]) * bend,
      ];
      pen.beginPath();
      pen.moveTo(...end(first));
      pen.arcTo(x, y, ...end(second), bend);
      pen.stroke();
    }
    const isJoint = way.to.length >= 4 || (way.to.length === 3 && style.dotsAtTs);
    if (isJoint) {
      pen.beginPath();
      // No dot of a page is quite as large as the next, and none reaches its neighbours' lines.
      const dot = Math.min(style.dot * line * (0.95 + 0.1 * random.next()), 0.8 * pitch);
      pen.arc(x, y, dot / 2, 0, 2 * Math.PI);
      pen.fill();
    }
  }
}

const WORDS = [
  "12V",
  "GND",
  "K1",
  "F3 10A",
  "M1",
  "S2",
  "X4",
  "PUMP",
  "87a",
  "RDBU",
  "1.5",
  "IN 2",
];

function writeIn(
  pen: SKRSContext2D,
  random: Random,
  [left, top, right, bottom]: readonly [number, number, number, number],
  pitch: number,
): void {
  const size = Math.min(pitch * 0.5, (bottom - top) * 0.5, (right - left) * 0.3);
  pen.font = `${size}px sans-serif`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.fillText(random.pick(WORDS), (left + right) / 2, (top + bottom) / 2, (right - left) * 0.8);
}

/** Words beside lines, as near as a draughtsman puts them and never on one. */
function writeBeside(
  pen: SKRSContext2D,
  random: Random,
  page: MadePage,
  place: (at: Place) => Point,
  pitch: number,
  line: number,
  hops: ReadonlySet<string>,
): void {
  pen.textAlign = "center";
  pen.textBaseline = "bottom";
  pen.font = `${pitch * 0.45}px sans-serif`;
  for (const net of page.nets) {
    for (const [a, b] of net.steps) {
      if (a[1] !== b[1] || hops.has(String(a)) || hops.has(String(b)) || !random.chance(0.08))
        continue;
      const [from, to] = [place(a), place(b)];
      pen.fillText(random.pick(WORDS), (from[0] + to[0]) / 2, from[1] - line, pitch * 0.7);
    }
  }
}

/** Words that touch the line which they name, or lie over it; each between two places of the lattice. */
function writeOn(
  pen: SKRSContext2D,
  random: Random,
  page: MadePage,
  place: (at: Place) => Point,
  pitch: number,
): void {
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.font = `${pitch * 0.4}px sans-serif`;
  const crossings = new Set(page.crossings.map(String));
  for (const net of page.nets) {
    for (const [a, b] of net.steps) {
      if (crossings.has(String(a)) || crossings.has(String(b)) || !random.chance(0.01)) continue;
      const [from, to] = [place(a), place(b)];
      const aside = (random.next() - 0.5) * 0.4 * pitch;
      const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      pen.fillText(random.pick(WORDS), x, y + aside, pitch * 0.5);
    }
  }
}
