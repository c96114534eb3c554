import { describeIssue } from "../../../base/index.ts";
import { type Picture, pictureType } from "../../../job/index.ts";

/** A picture ready to show. */
export interface ReadPhoto {
  readonly picture: Picture;
  /** Of the browser's own making: whoever asked for it gives it back. */
  readonly url: string;
  /** Pixels, upright as the camera meant it. */
  readonly width: number;
  readonly height: number;
}

/** The picture in a file the user chose, or what is wrong with it. */
export async function readPhoto(file: File): Promise<ReadPhoto | string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const header = pictureType(bytes, file.name);
  if (!header.ok) return header.issues.map(describeIssue).join(" ");
  return photoOf({ bytes, type: header.value.type }, file.name);
}

/** A picture of the job's, or what is wrong with it. */
export async function photoOf(picture: Picture, name: string): Promise<ReadPhoto | string> {
  const url = URL.createObjectURL(new Blob([picture.bytes as BlobPart], { type: picture.type }));
  const image = new Image();
  image.src = url;
  try {
    // Read as it will be shown, so that it is there once. The browser turns it upright by the camera's
    // own note; the header's size is before that.
    await image.decode();
    return { picture, url, width: image.naturalWidth, height: image.naturalHeight };
  } catch {
    URL.revokeObjectURL(url);
    return `${name} is damaged: take or export the picture again.`;
  }
}
