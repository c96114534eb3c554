import type { Box } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";

/** A piece of a picture, pixel for pixel; null where nothing of it is inside. */
export async function cropOf({ bytes, type }: Picture, box: Box): Promise<ImageBitmap | null> {
  const whole = await createImageBitmap(new Blob([bytes as BlobPart], { type }));
  const left = Math.max(0, Math.floor(box.left));
  const top = Math.max(0, Math.floor(box.top));
  const width = Math.min(whole.width, Math.ceil(box.right)) - left;
  const height = Math.min(whole.height, Math.ceil(box.bottom)) - top;
  try {
    return width > 0 && height > 0
      ? await createImageBitmap(whole, left, top, width, height)
      : null;
  } finally {
    whole.close();
  }
}
