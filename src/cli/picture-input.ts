import { basename } from "node:path";
import { fail, ok, type Result } from "../base/index.ts";
import { pictureType } from "../job/index.ts";
import type { Grey } from "../scan/index.ts";
import { readBytesPath } from "../store/files.ts";
import { DamagedPicture, RefusedPicture } from "./picture/damaged-picture.ts";
import { readJpeg } from "./picture/jpeg.ts";
import { readPng } from "./picture/png.ts";

const refused = (message: string): Result<never> => fail({ code: "picture", path: "", message });

/**
 * The picture in a PNG or JPEG file, grey, over white paper and as its camera was held. One that is too
 * large is refused by its header, before anything is unpacked.
 */
export async function readPicture(file: string): Promise<Result<Grey>> {
  const bytes = await readBytesPath(file);
  if (!bytes.ok) return bytes;
  const header = pictureType(bytes.value, basename(file));
  if (!header.ok) return header;
  const { type } = header.value;
  if (type === "image/webp") {
    return refused("a WebP picture is not read here: save it as PNG or JPEG");
  }
  try {
    return ok(type === "image/png" ? await readPng(bytes.value) : readJpeg(bytes.value));
  } catch (error) {
    if (error instanceof RefusedPicture) return refused(error.message);
    if (!(error instanceof DamagedPicture)) throw error;
    return refused(`the picture is damaged: ${error.message}; save it again from its source`);
  }
}
