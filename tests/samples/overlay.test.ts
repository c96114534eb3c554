import { loadImage } from "@napi-rs/canvas";
import { beforeAll, describe, expect, test } from "vitest";
import { blankPage } from "../../scripts/samples/drawing/page.ts";
import { distance, type Point } from "../../src/base/index.ts";
import { pinPosition, pinsOf } from "../../src/circuit/index.ts";
import { type Job, splitRef } from "../../src/job/index.ts";
import { readSample, samplePath } from "./sample-files.ts";

/** Pixels that the ink may lie off the traced line. */
const SLACK = 2;
/** Pixels between the places looked at along a wire. */
const STEP = 25;

interface Grey {
  readonly width: number;
  readonly data: Uint8ClampedArray;
}

async function greyOf(file: string): Promise<Grey> {
  const image = await loadImage(file);
  const { pen } = blankPage(image.width, image.height);
  pen.drawImage(image, 0, 0);
  const { data } = pen.getImageData(0, 0, image.width, image.height);
  return { width: image.width, data };
}

/** The lightness of every pixel in a square about a place. */
function lightAround({ width, data }: Grey, [x, y]: Point, reach: number): number[] {
  const values: number[] = [];
  for (let row = Math.round(y) - reach; row <= Math.round(y) + reach; row++) {
    for (let column = Math.round(x) - reach; column <= Math.round(x) + reach; column++) {
      values.push(data[(row * width + column) * 4 + 1] ?? 0);
    }
  }
  return values;
}

/** Darker by far than the paper about it, within the slack. */
function isInked(picture: Grey, at: Point): boolean {
  const around = lightAround(picture, at, 20).sort((a, b) => a - b);
  const paper = around[Math.floor(around.length * 0.7)] ?? 255;
  return Math.min(...lightAround(picture, at, SLACK)) < paper - 60;
}

function linesOf(job: Job): Point[][] {
  const pinAt = (ref: string): Point => {
    const { owner, name } = splitRef(ref);
    const part = job.diagram.parts.find(({ id }) => id === owner);
    const at = part ? pinPosition(part, name) : null;
    if (!at) throw new Error(`no pin ${ref}`);
    return at;
  };
  return job.diagram.wires.map((wire) => [pinAt(wire.from), ...(wire.path ?? []), pinAt(wire.to)]);
}

function placesAlong(line: readonly Point[]): Point[] {
  return line.slice(1).flatMap((to, index) => {
    const from = line[index] ?? to;
    const count = Math.max(2, Math.round(distance(from, to) / STEP));
    return Array.from({ length: count + 1 }, (_, step): Point => {
      const share = step / count;
      return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    });
  });
}

const show = ([x, y]: Point): string => `${x.toFixed(1)},${y.toFixed(1)}`;

describe.each([
  ["the aged scan of the sweeper", "sweeper"],
  ["the clean drawing of the trailer", "trailer-iso-12098"],
])("on %s", (_name, folder) => {
  const job = readSample(`${folder}/job.json`);
  const image = job.diagram.sheets[0]?.image;
  let picture: Grey;
  let height = 0;

  beforeAll(async () => {
    const path = samplePath(`${folder}/${image?.file ?? ""}`);
    picture = await greyOf(path);
    height = picture.data.length / 4 / picture.width;
  });

  test("the sheet states the picture's size", () => {
    expect([image?.width, image?.height]).toEqual([picture.width, height]);
  });

  test("every traced wire lies on ink from end to end", () => {
    const bare = linesOf(job)
      .flatMap(placesAlong)
      .filter((at) => !isInked(picture, at));
    expect(bare.map(show)).toEqual([]);
  });

  test("every pin that a wire goes to lies on ink", () => {
    const used = new Set(job.diagram.wires.flatMap(({ from, to }) => [from, to]));
    const bare = job.diagram.parts.flatMap((part) =>
      pinsOf(part)
        .filter(({ id }) => used.has(`${part.id}:${id}`))
        .filter(({ id }) => !isInked(picture, pinPosition(part, id) ?? [0, 0]))
        .map(({ id }) => `${part.id}:${id}`),
    );
    expect(bare).toEqual([]);
  });

  test("the same lines a few pixels off miss the ink: the two tests above can fail", () => {
    const places = linesOf(job)
      .flatMap(placesAlong)
      .map(([x, y]): Point => [x + 9, y + 9]);
    const inked = places.filter((at) => isInked(picture, at));
    expect(inked.length / places.length).toBeLessThan(0.4);
  });
});
