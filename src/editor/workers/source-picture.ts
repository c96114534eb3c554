import type { Box } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import { type Grey, greyFrom, greyOf, type Rgba, type Sliced } from "../../scan/index.ts";

/** What a tablet holds: a larger picture is worked on at this size. */
const MOST_PIXELS = 40_000_000;
/** Pixels read from the decoder at a time. */
const STRIP = 1 << 20;

/**
 * A picture decoded and read in pieces, upright as the camera meant it: the browser turns it by the
 * camera's own note. Places are pixels of the upright picture at its true size.
 */
export interface SourcePicture {
  readonly width: number;
  readonly height: number;
  /** Pixels kept for each true one: 1, or less for a picture too large. */
  readonly shrink: number;
  /** All of it, as colours or as greys, at the size that is kept; strip after strip. */
  colours(): Sliced<Rgba>;
  greys(): Sliced<Grey>;
  /** A box of it, edges whole pixels, so many pixels for each true one. */
  part(box: Box, scale: number): Rgba;
  bitmap(box: Box): Promise<ImageBitmap>;
  close(): void;
}

/** Rejects with a sentence for the user. */
export async function decoded({ bytes, type }: Picture): Promise<SourcePicture> {
  const whole = await createImageBitmap(new Blob([bytes as BlobPart], { type }), {
    imageOrientation: "from-image",
  }).catch(() => {
    throw new Error("The picture can't be read: it is cut short or damaged. Import it again.");
  });
  const { width, height } = whole;
  const shrink = Math.min(1, Math.sqrt(MOST_PIXELS / (width * height)));
  const bitmap = shrink < 1 ? await smaller(whole, shrink) : whole;
  return {
    width,
    height,
    shrink: bitmap.width / width,
    *colours() {
      const data = new Uint8ClampedArray(4 * bitmap.width * bitmap.height);
      yield* inStrips(bitmap, (strip, top) => data.set(strip.data, 4 * top * bitmap.width));
      return { width: bitmap.width, height: bitmap.height, data };
    },
    *greys() {
      const grey = greyOf(bitmap.width, bitmap.height);
      yield* inStrips(bitmap, (strip, top) =>
        grey.data.set(greyFrom(strip).data, top * bitmap.width),
      );
      return grey;
    },
    part: (box, scale) => {
      const by = bitmap.width / width;
      const [wide, high] = [box.right - box.left, box.bottom - box.top];
      const size = {
        width: Math.max(1, Math.ceil(wide * scale)),
        height: Math.max(1, Math.ceil(high * scale)),
      };
      const ink = paperOf(size.width, size.height);
      ink.imageSmoothingQuality = "high";
      ink.drawImage(
        bitmap,
        box.left * by,
        box.top * by,
        wide * by,
        high * by,
        0,
        0,
        wide * scale,
        high * scale,
      );
      return { ...size, data: ink.getImageData(0, 0, size.width, size.height).data };
    },
    bitmap: ({ left, top, right, bottom }) => {
      const by = bitmap.width / width;
      const [wide, high] = [(right - left) * by, (bottom - top) * by];
      return createImageBitmap(
        bitmap,
        Math.round(left * by),
        Math.round(top * by),
        Math.max(1, Math.round(wide)),
        Math.max(1, Math.round(high)),
      );
    },
    close: () => bitmap.close(),
  };
}

async function smaller(bitmap: ImageBitmap, by: number): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(bitmap, {
      resizeWidth: Math.round(bitmap.width * by),
      resizeHeight: Math.round(bitmap.height * by),
      resizeQuality: "high",
    });
  } finally {
    bitmap.close();
  }
}

/** White paper to draw on and read from. */
function paperOf(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const ink = new OffscreenCanvas(width, height).getContext("2d", {
    alpha: false,
    willReadFrequently: true,
  });
  if (!ink) throw new Error("The picture is too large for this device to work on.");
  ink.fillStyle = "#ffffff";
  ink.fillRect(0, 0, width, height);
  return ink;
}

function* inStrips(bitmap: ImageBitmap, read: (strip: Rgba, top: number) => void): Sliced<void> {
  const { width, height } = bitmap;
  const rows = Math.min(height, Math.max(1, Math.floor(STRIP / width)));
  const ink = paperOf(width, rows);
  for (let top = 0; top < height; top += rows) {
    const high = Math.min(rows, height - top);
    ink.fillRect(0, 0, width, rows);
    ink.drawImage(bitmap, 0, -top);
    read(ink.getImageData(0, 0, width, high), top);
    yield (top + high) / height;
  }
}
