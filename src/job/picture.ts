import { fail, ok, type Result } from "../base/index.ts";
import { LIMITS } from "./limits.ts";
import { issue } from "./wording.ts";

export interface Picture {
  readonly bytes: Uint8Array;
  /** MIME type, found from the bytes and not from a name: image/png, image/jpeg or image/webp. */
  readonly type: string;
}

export interface PictureHeader {
  readonly type: "image/png" | "image/jpeg" | "image/webp";
  /** Pixels as stored, before any turn that a camera noted beside them. */
  readonly width: number;
  readonly height: number;
}

/** File extension, without its dot, for a MIME type that `pictureType` gives. */
export const PICTURE_EXTENSIONS: Readonly<Record<PictureHeader["type"], string>> = {
  "image/png": "png",
  "image/jpeg": "jpg",
  "image/webp": "webp",
};

export const extensionOf = (type: string): string =>
  PICTURE_EXTENSIONS[type as PictureHeader["type"]] ?? "bin";

const word = (bytes: Uint8Array, at: number) => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
const wordLow = (bytes: Uint8Array, at: number) => (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8);
const threeLow = (bytes: Uint8Array, at: number) =>
  wordLow(bytes, at) | ((bytes[at + 2] ?? 0) << 16);
const text = (bytes: Uint8Array, at: number, length: number) =>
  String.fromCharCode(...bytes.subarray(at, at + length));

/** PNG (ISO/IEC 15948): the signature, then the IHDR chunk with width and height. */
function pngSize(bytes: Uint8Array): [number, number] | null {
  if (text(bytes, 0, 8) !== "\x89PNG\r\n\x1a\n" || text(bytes, 12, 4) !== "IHDR") return null;
  const at = (offset: number) => word(bytes, offset) * 65536 + word(bytes, offset + 2);
  return [at(16), at(20)];
}

/** JPEG (ISO/IEC 10918-1): marker segments up to the frame header, SOF0 to SOF15. */
function jpegSize(bytes: Uint8Array): [number, number] | null {
  if (word(bytes, 0) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at++;
      continue;
    }
    // C4, C8 and CC share the frame headers' range but are tables and a reserved code.
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return [word(bytes, at + 7), word(bytes, at + 5)];
    const standsAlone = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
    const length = standsAlone ? 0 : word(bytes, at + 2);
    if (!standsAlone && length < 2) return null;
    at += 2 + length;
  }
  return null;
}

/** WebP (RFC 9649): a RIFF file whose first chunk is lossy, lossless or extended. */
function webpSize(bytes: Uint8Array): [number, number] | null {
  if (text(bytes, 0, 4) !== "RIFF" || text(bytes, 8, 4) !== "WEBP" || bytes.length < 30)
    return null;
  switch (text(bytes, 12, 4)) {
    case "VP8 ":
      return [wordLow(bytes, 26) & 0x3fff, wordLow(bytes, 28) & 0x3fff];
    case "VP8L": {
      if (bytes[20] !== 0x2f) return null;
      const low = wordLow(bytes, 21);
      const high = wordLow(bytes, 23);
      return [(low & 0x3fff) + 1, (((low >> 14) | (high << 2)) & 0x3fff) + 1];
    }
    case "VP8X":
      return [threeLow(bytes, 24) + 1, threeLow(bytes, 27) + 1];
    default:
      return null;
  }
}

const READERS = [
  ["image/png", pngSize],
  ["image/jpeg", jpegSize],
  ["image/webp", webpSize],
] as const;

/**
 * What kind of picture the bytes begin as, and its size, read from its header alone: a picture
 * that is damaged further in is found only when it is drawn. `file` is the name for messages,
 * `path` the place in the job that refers to it.
 */
export function pictureType(bytes: Uint8Array, file: string, path = ""): Result<PictureHeader> {
  for (const [type, sizeOf] of READERS) {
    const size = sizeOf(bytes);
    if (!size) continue;
    const [width, height] = size;
    if (width === 0 || height === 0) break;
    if (width * height > LIMITS.pixels) {
      return fail(issue("picture-too-large", path, file, width, height));
    }
    return ok({ type, width, height });
  }
  return fail(issue("not-a-picture", path, file));
}
