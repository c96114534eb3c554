import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { expect } from "vitest";
import { readPicture } from "../../src/cli/picture-input.ts";
import { type Grey, greyFrom } from "../../src/scan/index.ts";

async function read(bytes: Uint8Array) {
  const folder = await mkdtemp(join(tmpdir(), "pintruth-picture-"));
  try {
    const file = join(folder, "picture");
    await writeFile(file, bytes);
    return await readPicture(file);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** The picture in these bytes of a file, as the command line reads it. */
export async function greyIn(bytes: Uint8Array): Promise<Grey> {
  const result = await read(bytes);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.value;
}

/** What the command line says of a file that it does not read. */
export async function complaintOf(bytes: Uint8Array): Promise<string> {
  const result = await read(bytes);
  return result.ok ? "nothing" : (result.issues[0]?.message ?? "");
}

/** The picture as a browser's canvas has it (Skia), over white paper. */
export async function judged(bytes: Uint8Array): Promise<Grey> {
  const image = await loadImage(Buffer.from(bytes));
  const { width, height } = image;
  const pen = createCanvas(width, height).getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.drawImage(image, 0, 0);
  return greyFrom({ width, height, data: pen.getImageData(0, 0, width, height).data });
}

/** The largest difference between two pictures of one size, in steps of 255. */
export function difference(a: Grey, b: Grey): number {
  expect([a.width, a.height]).toEqual([b.width, b.height]);
  return a.data.reduce(
    (most, value, at) => Math.max(most, Math.abs(value - (b.data[at] ?? 999))),
    0,
  );
}
