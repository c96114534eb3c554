import { createCanvas, type SKRSContext2D } from "@napi-rs/canvas";
import { type Box, boundsOf, type Point, type Random, turn } from "../../../src/base/index.ts";
import type { Rgba } from "../../../src/scan/raster.ts";
import { between, type PrintedSymbol, SYMBOLS, WORDS } from "./styles.ts";

export interface PrintedPart {
  readonly kind: string;
  readonly box: Box;
  readonly at: Point;
  readonly turn: number;
  /** Where its lines leave it, at the ends of the drawn leads. */
  readonly ends: readonly Point[];
}

export interface SymbolSheet {
  readonly picture: Rgba;
  readonly parts: readonly PrintedPart[];
  readonly line: number;
}

export type Pen = SKRSContext2D;

/** A white page with what is drawn on it in one pen. */
export function drawAlone(
  width: number,
  height: number,
  line: number,
  draw: (pen: Pen) => void,
): Rgba {
  const pen = createCanvas(width, height).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.strokeStyle = pen.fillStyle = "black";
  pen.lineWidth = line;
  draw(pen);
  return { width, height, data: pen.getImageData(0, 0, width, height).data };
}

const COLUMNS = 6;
const ROWS = 5;

/**
 * A page of symbols in a grid, each wired on to its cell's edges, with words beside them and in empty
 * cells; one office's pen and sizes for all of it.
 */
export function symbolSheet(random: Random): SymbolSheet {
  const line = between(random, 2.4, 5);
  // Symbol units to line widths, as sheets have them from crowded to generous.
  const unit = line * between(random, 3.5, 7);
  const cell = 9 * unit;
  const [width, height] = [Math.round(COLUMNS * cell), Math.round(ROWS * cell)];
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.strokeStyle = pen.fillStyle = "black";
  pen.lineWidth = line;
  pen.lineJoin = "miter";
  const parts: PrintedPart[] = [];
  const words = () => {
    pen.font = `${between(random, 4.5, 8) * line}px sans-serif`;
    return random.pick(WORDS);
  };
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const at: Point = [
        (column + 0.5) * cell + between(random, -0.4, 0.4) * unit,
        (row + 0.5) * cell + between(random, -0.4, 0.4) * unit,
      ];
      if (random.chance(0.2)) {
        drawDistraction(pen, random, at, unit, words());
        continue;
      }
      const symbol = random.pick(SYMBOLS)(random);
      const part = drawSymbol(
        pen,
        symbol,
        at,
        unit * between(random, 0.85, 1.15),
        90 * random.below(4),
      );
      for (const end of part.ends) wireOn(pen, end, at, cell);
      parts.push(part);
      const beside: Point = [at[0] + 2.2 * unit, at[1] + 2.6 * unit];
      pen.textAlign = "left";
      pen.textBaseline = "top";
      if (random.chance(0.6)) pen.fillText(words(), ...beside);
    }
  }
  return {
    picture: { width, height, data: pen.getImageData(0, 0, width, height).data },
    parts,
    line,
  };
}

function drawSymbol(
  pen: SKRSContext2D,
  symbol: PrintedSymbol,
  at: Point,
  unit: number,
  degrees: number,
): PrintedPart {
  const there = (p: Point): Point => {
    const [x, y] = turn([p[0] * unit, p[1] * unit], degrees);
    return [at[0] + x, at[1] + y];
  };
  for (const { points, isClosed, isFilled } of symbol.strokes) {
    pen.beginPath();
    points.forEach((p, n) => {
      if (n === 0) pen.moveTo(...there(p));
      else pen.lineTo(...there(p));
    });
    if (isClosed) pen.closePath();
    if (isFilled) pen.fill();
    pen.stroke();
  }
  if (symbol.letter) {
    pen.save();
    pen.font = `${1.8 * unit}px sans-serif`;
    pen.textAlign = "center";
    pen.textBaseline = "middle";
    pen.fillText(symbol.letter, at[0], at[1]);
    pen.restore();
  }
  const [x, y] = symbol.half;
  const left = symbol.kind === "ground" ? 0 : -x;
  const right = symbol.kind === "ground" ? 2 * x : x;
  // A blade opens to one side.
  const bottom = symbol.kind === "switch" ? 0.2 : y;
  const box = boundsOf([there([left, -y]), there([right, bottom])]) as Box;
  return { kind: symbol.kind, box, at, turn: degrees, ends: symbol.ends.map(there) };
}

/** From the end of a lead straight on to near the cell's edge, and a little round the corner. */
function wireOn(pen: SKRSContext2D, end: Point, at: Point, cell: number): void {
  const [dx, dy] = [Math.sign(Math.round(end[0] - at[0])), Math.sign(Math.round(end[1] - at[1]))];
  const isLevel = Math.abs(end[0] - at[0]) > Math.abs(end[1] - at[1]);
  const far = 0.45 * cell;
  const corner: Point = isLevel ? [at[0] + dx * far, end[1]] : [end[0], at[1] + dy * far];
  pen.beginPath();
  pen.moveTo(...end);
  pen.lineTo(...corner);
  pen.lineTo(
    ...(isLevel
      ? ([corner[0], corner[1] + far] as const)
      : ([corner[0] + far, corner[1]] as const)),
  );
  pen.stroke();
}

/** Words, crossings, corners and unwired shapes such as a plug's face has. */
function drawDistraction(
  pen: SKRSContext2D,
  random: Random,
  at: Point,
  unit: number,
  word: string,
): void {
  const [x, y] = at;
  const stroke = (...points: Point[]) => {
    pen.beginPath();
    for (const p of points) pen.lineTo(...p);
    pen.stroke();
  };
  pen.textAlign = "center";
  pen.textBaseline = "bottom";
  switch (random.below(5)) {
    case 0:
      stroke([x - 4 * unit, y], [x + 4 * unit, y]);
      pen.fillText(word, x, y - unit * 0.3);
      break;
    case 1:
      stroke([x - 4 * unit, y], [x + 4 * unit, y]);
      stroke([x, y - 4 * unit], [x, y + 4 * unit]);
      break;
    case 2:
      stroke([x - 4 * unit, y], [x, y], [x, y + 4 * unit]);
      stroke([x - 4 * unit, y - unit], [x + unit, y - unit], [x + unit, y + 4 * unit]);
      break;
    case 3:
      pen.beginPath();
      pen.arc(x, y, 1.2 * unit, 0, 2 * Math.PI);
      pen.stroke();
      if (random.chance(0.5)) {
        stroke([x - unit * 0.8, y - unit * 0.8], [x + unit * 0.8, y + unit * 0.8]);
        stroke([x - unit * 0.8, y + unit * 0.8], [x + unit * 0.8, y - unit * 0.8]);
      }
      pen.fillText(word, x, y + 3 * unit);
      break;
    default:
      pen.fillText(word, x, y);
      pen.fillText(word, x, y + 2 * unit);
  }
}
