import { type Box, boundsOf, type Point } from "../base/index.ts";
import type { PlugKey, PlugOutline } from "../job/index.ts";
import { type FaceView, outlineBox, type SeenCavity, spacingOf } from "../plug/index.ts";
import type { SheetRow } from "./model.ts";
import { centredText, drawing, element, INK, wireSwatch } from "./svg.ts";
import { plain } from "./text.ts";

export interface FaceDrawing {
  readonly svg: string;
  /** Points. */
  readonly width: number;
  readonly height: number;
}

const HOUSING = "#f4f4f2";
const SOFT = "#555555";
/** Points that a lone cavity, or two far apart, may at most be from each other. */
const WIDEST_SPACING = 64;

/** The face as large as it may be within a box of points. `rows` stand in the plug's order. */
export function faceDrawing(
  face: FaceView,
  rows: readonly SheetRow[],
  most: { readonly width: number; readonly height: number },
): FaceDrawing {
  const { left, top, right, bottom } = extentOf(face);
  const edge = 3;
  const scale = Math.min(
    (most.width - 2 * edge) / (right - left),
    (most.height - 2 * edge) / (bottom - top),
    WIDEST_SPACING / spacingOf(face.cavities),
  );
  const place = ([x, y]: Point): Point => [edge + (x - left) * scale, edge + (y - top) * scale];
  const width = (right - left) * scale + 2 * edge;
  const height = (bottom - top) * scale + 2 * edge;
  const spacing = spacingOf(face.cavities) * scale;
  const inside = [
    ...face.keys.filter((key) => key.kind === "latch").map((key) => keyDrawing(key, place, scale)),
    face.outline ? outlineDrawing(face.outline, place, scale) : "",
    ...face.keys.filter((key) => key.kind === "key").map((key) => keyDrawing(key, place, scale)),
    ...face.cavities.map((seen) => cavityDrawing(seen, rows[seen.index], place(seen.at), spacing)),
  ];
  return { svg: drawing(width, height, inside.join("")), width, height };
}

/** What the drawing covers, millimetres: the housing and whatever stands out from it. */
export function extentOf(face: FaceView): Box {
  if (!face.outline) return face.bounds;
  const { left, top, right, bottom } = outlineBox(face.outline);
  const corners: Point[] = [
    [left, top],
    [right, bottom],
  ];
  for (const { at, width, height, turn } of face.keys) {
    const isSquare = (turn ?? 0) % 90 === 0;
    const isUpright = (turn ?? 0) % 180 !== 0;
    const across = isSquare ? (isUpright ? height : width) : Math.hypot(width, height);
    const down = isSquare ? (isUpright ? width : height) : across;
    corners.push([at[0] - across / 2, at[1] - down / 2], [at[0] + across / 2, at[1] + down / 2]);
  }
  for (const { at } of face.cavities) corners.push(at);
  return boundsOf(corners) ?? face.bounds;
}

type Place = (point: Point) => Point;

function outlineDrawing(outline: PlugOutline, place: Place, scale: number): string {
  const look = { fill: HOUSING, stroke: INK, "stroke-width": 1.6 };
  switch (outline.shape) {
    case "rectangle": {
      const [x, y] = place(outline.at);
      const width = outline.width * scale;
      const height = outline.height * scale;
      return element("rect", { x, y, width, height, rx: (outline.radius ?? 0) * scale, ...look });
    }
    case "circle": {
      const [cx, cy] = place(outline.at);
      return element("circle", { cx, cy, r: outline.radius * scale, ...look });
    }
    case "polygon": {
      const points = outline.points.map((point) =>
        place(point)
          .map((v) => v.toFixed(2))
          .join(","),
      );
      return element("polygon", { points: points.join(" "), ...look });
    }
  }
}

function keyDrawing(key: PlugKey, place: Place, scale: number): string {
  const [x, y] = place(key.at);
  const width = key.width * scale;
  const height = key.height * scale;
  const turn = key.turn ?? 0;
  const shape = element("rect", {
    x: x - width / 2,
    y: y - height / 2,
    width,
    height,
    rx: Math.min(width, height) * 0.15,
    fill: key.kind === "latch" ? "#d5d5d1" : INK,
    stroke: INK,
    "stroke-width": 1.2,
    transform: `rotate(${turn} ${x.toFixed(2)} ${y.toFixed(2)})`,
  });
  const word = key.kind === "latch" && width > 22 && height > 7 && turn % 180 === 0;
  const size = Math.min(8, height * 0.75);
  return word ? shape + centredText(x, y + size * 0.36, "latch", { size }) : shape;
}

/** A round tile: the mark, the wire and its code; so laid out that nothing needs colour to be read. */
function cavityDrawing(
  seen: SeenCavity,
  row: SheetRow | undefined,
  [x, y]: Point,
  spacing: number,
): string {
  const radius = spacing * 0.46;
  const state = row?.state ?? "untied";
  const unused = state === "empty" || state === "blocked";
  const wrong = row?.wrong ?? false;
  const ring = element("circle", {
    cx: x,
    cy: y,
    r: radius,
    fill: state === "blocked" ? "#d9d9d6" : "#ffffff",
    stroke: INK,
    "stroke-width": wrong ? 2.2 : 1,
    ...(unused ? { "stroke-dasharray": "2.5 2" } : {}),
  });
  const code = row?.colourCode ?? "";
  const word = unused ? state : code === "" ? "–" : code;
  const mark = plain(seen.mark);
  const wordSize = fitted(word, spacing * 0.2, spacing * 0.62);
  const wide = spacing * 0.52;
  const high = spacing * 0.13;
  return [
    ring,
    state === "blocked" ? cross(x, y, radius * 0.7, 0.8, "#8a8a86") : "",
    centredText(x, y - spacing * 0.08, mark, {
      size: fitted(mark, spacing * 0.34, spacing * 0.66),
      bold: true,
      fill: unused ? SOFT : INK,
    }),
    row?.colour
      ? wireSwatch(row.colour, {
          x: x - wide / 2,
          y: y - spacing * 0.01,
          width: wide,
          height: high,
        })
      : "",
    centredText(x, y + spacing * (row?.colour ? 0.3 : 0.2), word, {
      size: wordSize,
      fill: unused ? SOFT : INK,
    }),
    wrong ? badge(x + radius * 0.74, y - radius * 0.74, spacing * 0.13) : "",
  ].join("");
}

/** Type no larger than `most` that keeps the text within `width`, taking half an em a letter. */
const fitted = (text: string, most: number, width: number) =>
  Math.min(most, width / (0.62 * Math.max(1, text.length)));

/** A cross in a black disc: the printed word of this cavity is wrong. */
const badge = (x: number, y: number, radius: number) =>
  element("circle", { cx: x, cy: y, r: radius, fill: INK, stroke: "#ffffff", "stroke-width": 1 }) +
  cross(x, y, radius * 0.45, radius * 0.3, "#ffffff");

function cross(x: number, y: number, reach: number, width: number, stroke: string): string {
  const line = (dx: number, dy: number) =>
    element("line", {
      x1: x - dx,
      y1: y - dy,
      x2: x + dx,
      y2: y + dy,
      stroke,
      "stroke-width": width,
    });
  return line(reach, reach) + line(reach, -reach);
}
