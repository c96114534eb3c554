import { readFile } from "node:fs/promises";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { type Job, type Picture, readJobText, writePintruth } from "../../../src/job/index.ts";

const FOLDER = "sample-data/sweeper";

export interface UntracedDemo {
  /** The demo as it is, traced. */
  readonly traced: Job;
  /** An archive of the demo with its parts and no wire or splice, and a hole in one line of its picture. */
  readonly bytes: Buffer;
}

/** @param hole where the picture has it, pixels: the middle, and half of its side */
export async function untracedDemo(hole: {
  readonly at: readonly [x: number, y: number];
  readonly half: number;
}): Promise<UntracedDemo> {
  const read = readJobText(await readFile(`${FOLDER}/job.json`, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const traced = read.value;
  const file = traced.diagram.sheets[0]?.image?.file ?? "";
  const image = await loadImage(`${FOLDER}/${file}`);
  const canvas = createCanvas(image.width, image.height);
  const ink = canvas.getContext("2d");
  ink.drawImage(image, 0, 0);
  // The paper beside the line, laid over it.
  const [x, y] = hole.at;
  const side = 2 * hole.half;
  const paper = ink.getImageData(x + 2 * side, y - hole.half, 2 * side, side);
  ink.putImageData(paper, x - side, y - hole.half);
  const bytes = new Uint8Array(await canvas.encode("jpeg", 92));
  const bare: Job = {
    ...traced,
    title: "Untraced",
    diagram: {
      ...traced.diagram,
      parts: traced.diagram.parts.filter(({ kind }) => kind !== "splice"),
      wires: [],
    },
  };
  const picture: Picture = { bytes, type: "image/jpeg" };
  return { traced, bytes: Buffer.from(writePintruth(bare, new Map([[file, picture]]))) };
}
