import type { Box } from "../../../src/base/index.ts";
import { seededRandom } from "../../../src/base/index.ts";
import type { Quad, Rgba } from "../../../src/scan/index.ts";
import { harmed, NO_HARM } from "../../support/drawn-pages/degrade.ts";
import { type DrawnPage, drawPage } from "../../support/drawn-pages/draw.ts";
import { type MadePage, makePage } from "../../support/drawn-pages/lattice.ts";
import { photographed } from "../../support/drawn-pages/photographed.ts";
import { randomStyle } from "../../support/drawn-pages/style.ts";

/** An A3 sheet at so many dots an inch: 300 makes 4961 by 3508 pixels. */
export interface BenchPage {
  readonly made: MadePage;
  readonly terminals: DrawnPage["terminals"];
  readonly parts: readonly Box[];
  /** The sheet as a scanner has it: a little soft, grainy and shaded. */
  readonly scan: Rgba;
  /** The same sheet askew on a table, as many pixels. */
  readonly photo: Rgba;
}

/** Places across and down: their pitch fills the sheet at 300 dots an inch to the pixel. */
const [COLUMNS, ROWS] = [98, 69];
const PITCH = (4961 / (COLUMNS + 1) / 300) * 25.4;

export async function benchPage(dpi: number): Promise<BenchPage> {
  const random = seededRandom(1);
  const made = makePage(random, COLUMNS, ROWS);
  const style = { ...randomStyle(random), pitch: PITCH, line: 0.35, jumps: false, words: true };
  const drawn = drawPage(random, made, style, dpi);
  const line = (style.line * dpi) / 25.4;
  const harm = { ...NO_HARM, blur: 0.8, noise: 8, shade: 0.25, fade: 30 };
  const { picture: scan } = await harmed(random, drawn.picture, harm, line);
  const { width, height } = drawn.picture;
  const corners = [
    [0.05, 0.06],
    [0.94, 0.04],
    [0.96, 0.95],
    [0.04, 0.93],
  ].map(([x = 0, y = 0]) => [x * width, y * height]) as unknown as Quad;
  const photo = photographed(random, drawn.picture, {
    width,
    height,
    corners,
    ground: 80,
    noise: 5,
  });
  const parts = drawn.parts.map(([left, top, right, bottom]) => ({ left, top, right, bottom }));
  return { made, terminals: drawn.terminals, parts, scan, photo };
}
