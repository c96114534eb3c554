import type { Box } from "../../base/index.ts";
import type { SymbolPage } from "./symbol-page.ts";

/** Shares of the page: a frame is at least so wide and high, and its lines bow and lean by so much. */
const LEAST = 0.75;
const BAND = 0.012;
/** Share of each of its sides along which there is line. */
const DRAWN = 0.9;
/** Places looked at along a side. */
const LOOKS = 80;

/** The frame around the drawing, pixels of the symbol page: the innermost large box with four sides; else null. */
export function pageFrame(page: SymbolPage): Box | null {
  const { width, height, components } = page;
  const frames = components.list.filter(
    (one) =>
      one.right - one.left > LEAST * width &&
      one.bottom - one.top > LEAST * height &&
      sidesOf(one).every((side) => isDrawn(page, side)),
  );
  const [inner] = frames.sort((a, b) => a.right - a.left - (b.right - b.left));
  if (!inner) return null;
  const { left, top, right, bottom } = inner;
  return { left, top, right, bottom };
}

/** Whether a box lies on the frame's lines or beyond them: ticks and folds there look like much. */
export function isOnFrame({ width, height }: SymbolPage, frame: Box, box: Box): boolean {
  const [x, y] = [BAND * width, BAND * height];
  return (
    box.left < frame.left + x ||
    box.right > frame.right - x ||
    box.top < frame.top + y ||
    box.bottom > frame.bottom - y
  );
}

interface Side {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

const sidesOf = ({ left, top, right, bottom }: Box): readonly Side[] => [
  { from: [left, top], to: [right, top] },
  { from: [right, top], to: [right, bottom] },
  { from: [right, bottom], to: [left, bottom] },
  { from: [left, bottom], to: [left, top] },
];

function isDrawn({ width, height, ink }: SymbolPage, { from, to }: Side): boolean {
  const isLevel = from[1] === to[1];
  const band = Math.ceil(BAND * (isLevel ? height : width));
  let drawn = 0;
  for (let n = 0; n < LOOKS; n++) {
    const share = (n + 0.5) / LOOKS;
    const x = Math.round(from[0] + (to[0] - from[0]) * share);
    const y = Math.round(from[1] + (to[1] - from[1]) * share);
    for (let by = -band; by <= band; by++) {
      const [px, py] = isLevel ? [x, y + by] : [x + by, y];
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      if (!ink.data[py * width + px]) continue;
      drawn++;
      break;
    }
  }
  return drawn >= DRAWN * LOOKS;
}
