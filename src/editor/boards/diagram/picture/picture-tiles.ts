import type { ThemeName } from "../../../theme/theme.tsx";

/** One square of a picture at one level, colours already dimmed for the theme. */
interface Tile {
  /** Pixels of the full picture that it covers. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly bitmap: ImageBitmap;
}

/** A picture cut up for quick drawing; levels fill up from the coarsest while it loads. */
export interface PictureTiles {
  readonly width: number;
  readonly height: number;
  /** Level n is reduced 2^n times. */
  readonly levels: readonly (readonly Tile[])[];
  close(): void;
}

export interface Tint {
  readonly theme: ThemeName;
  readonly paper: string;
}

/** Small enough for the textures of any tablet, large enough that few are drawn in a frame. */
const TILE = 1024;

/** How much of the paper's colour is laid over the picture, so that the ink of the trace stands out. */
const VEIL: Readonly<Record<ThemeName, number>> = { light: 0.42, dark: 0.38 };

function bake(bitmap: ImageBitmap, left: number, top: number, tint: Tint): ImageBitmap {
  const width = Math.min(TILE, bitmap.width - left);
  const height = Math.min(TILE, bitmap.height - top);
  const canvas = new OffscreenCanvas(width, height);
  const ink = canvas.getContext("2d", { alpha: false });
  if (!ink) throw new Error("no canvas to draw on");
  ink.fillStyle = "#ffffff";
  ink.fillRect(0, 0, width, height);
  ink.drawImage(bitmap, left, top, width, height, 0, 0, width, height);
  if (tint.theme === "dark") {
    // Cream paper turned over would be navy: most of its colour goes first.
    ink.globalCompositeOperation = "saturation";
    ink.globalAlpha = 0.8;
    ink.fillStyle = "#808080";
    ink.fillRect(0, 0, width, height);
    ink.globalAlpha = 1;
    ink.fillStyle = "#ffffff";
    ink.globalCompositeOperation = "difference";
    ink.fillRect(0, 0, width, height);
    ink.globalCompositeOperation = "source-over";
  }
  ink.globalAlpha = VEIL[tint.theme];
  ink.fillStyle = tint.paper;
  ink.fillRect(0, 0, width, height);
  return canvas.transferToImageBitmap();
}

const breathe = () => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * Decodes a picture and cuts every level into tiles. `progress` is called after each level, the
 * coarsest first. Rejects with a DOMException when the bytes are no picture.
 */
export async function cutPicture(
  blob: Blob,
  tint: Tint,
  progress: (tiles: PictureTiles) => void,
  stopped: () => boolean,
): Promise<void> {
  const full = await createImageBitmap(blob);
  const { width, height } = full;
  const reductions = Math.max(0, Math.ceil(Math.log2(Math.max(width, height) / TILE)));
  const levels: Tile[][] = Array.from({ length: reductions + 1 }, () => []);
  const close = () => {
    for (const tile of levels.flat()) tile.bitmap.close();
  };
  for (let level = reductions; level >= 0 && !stopped(); level--) {
    const factor = 2 ** level;
    const size = {
      resizeWidth: Math.max(1, Math.round(width / factor)),
      resizeHeight: Math.max(1, Math.round(height / factor)),
    };
    const reduced =
      level === 0 ? full : await createImageBitmap(full, { ...size, resizeQuality: "medium" });
    const [wide, high] = [width / reduced.width, height / reduced.height];
    const tiles: Tile[] = [];
    for (let top = 0; top < reduced.height && !stopped(); top += TILE) {
      for (let left = 0; left < reduced.width && !stopped(); left += TILE) {
        const bitmap = bake(reduced, left, top, tint);
        tiles.push({
          left: left * wide,
          top: top * high,
          width: bitmap.width * wide,
          height: bitmap.height * high,
          bitmap,
        });
        await breathe();
      }
    }
    if (reduced !== full) reduced.close();
    levels[level] = tiles;
    if (!stopped()) progress({ width, height, levels: [...levels], close });
  }
  full.close();
  if (stopped()) close();
}
