import type { Picture } from "../../job/index.ts";
import type { Rgba } from "../../scan/index.ts";

/** Decodes a picture, upright as the camera meant it. Rejects with a sentence for the user. */
export async function pixelsOf({ bytes, type }: Picture): Promise<Rgba> {
  const bitmap = await createImageBitmap(new Blob([bytes as BlobPart], { type })).catch(() => {
    throw new Error("The picture can't be read: it is cut short or damaged. Import it again.");
  });
  const { width, height } = bitmap;
  try {
    const canvas = new OffscreenCanvas(width, height);
    const ink = canvas.getContext("2d", { alpha: false, willReadFrequently: true });
    if (!ink) throw new Error("The picture is too large for this device to work on.");
    ink.fillStyle = "#ffffff";
    ink.fillRect(0, 0, width, height);
    ink.drawImage(bitmap, 0, 0);
    const { data } = ink.getImageData(0, 0, width, height);
    return { width, height, data };
  } finally {
    bitmap.close();
  }
}
