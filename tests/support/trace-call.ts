import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createCanvas, ImageData, type SKRSContext2D } from "@napi-rs/canvas";
import { afterAll, beforeAll, expect } from "vitest";
import type { TraceAnswer } from "../../src/cli/commands/trace.ts";
import type { Rgba } from "../../src/scan/index.ts";
import { call } from "../cli/call.ts";

/** A folder for the files of one file of tests; it goes with the last of them. */
export function testFolder() {
  let folder = "";
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pintruth-trace-"));
  });
  afterAll(() => rm(folder, { recursive: true }));
  const file = async (name: string, content: string | Uint8Array): Promise<string> => {
    const path = join(folder, name);
    await writeFile(path, content);
    return path;
  };
  return {
    path: () => folder,
    file,
    json: (name: string, content: unknown) => file(name, JSON.stringify(content)),
  };
}

export function canvasOf({ width, height, data }: Rgba) {
  const canvas = createCanvas(width, height);
  const copy = data.slice() as Uint8ClampedArray<ArrayBuffer>;
  canvas.getContext("2d").putImageData(new ImageData(copy, width, height), 0, 0);
  return canvas;
}

/** White paper on which a pen draws in black. */
export function paper(width: number, height: number, draw: (pen: SKRSContext2D) => void) {
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, width, height);
  pen.fillStyle = pen.strokeStyle = "black";
  draw(pen);
  return canvas;
}

/** What `pintruth trace` answers, as JSON, to a call that it takes. */
export async function traced(...argv: string[]): Promise<TraceAnswer> {
  const { status, out, err } = await call("trace", "--json", ...argv);
  expect([status, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

/** A call that `pintruth trace` refuses: 2, one line on stderr, which is returned, and nothing on stdout. */
export async function refused(...argv: string[]): Promise<string> {
  const { status, out, err } = await call("trace", "--json", ...argv);
  expect([status, out], argv.join(" ")).toEqual([2, ""]);
  expect(err, argv.join(" ")).toMatch(/^pintruth: [^\n]+\n$/);
  return err;
}

/** Lists of names, each sorted and as one text, in order. */
export const sorted = (lists: readonly (readonly string[])[]) =>
  lists.map((names) => [...names].sort().join(" ")).sort();
