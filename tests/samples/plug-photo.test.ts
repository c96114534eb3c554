import { createCanvas, type Image, loadImage } from "@napi-rs/canvas";
import { beforeAll, describe, expect, test } from "vitest";
import { MACHINE } from "../../scripts/samples/sweeper/machine.ts";
import { PLUG_PHOTO, plugPhoto, wayOfWire } from "../../scripts/samples/sweeper/plug-photo.ts";
import type { Box } from "../../src/base/index.ts";
import {
  estimateWhite,
  finished,
  type Rgba,
  type SeenWire,
  SPOT_ROOM,
  seenWire,
} from "../../src/scan/index.ts";
import { sampleBytes } from "./sample-files.ts";

let photo: Image;
beforeAll(async () => {
  photo = await loadImage(Buffer.from(sampleBytes(`sweeper/${PLUG_PHOTO}`)));
});

/** A piece of a picture, `scale` times as large. */
function pieceOf(image: Image, { left, top, right, bottom }: Box, scale: number): Rgba {
  const [width, height] = [right - left, bottom - top].map((side) => Math.round(side * scale)) as [
    number,
    number,
  ];
  const pen = createCanvas(width, height).getContext("2d");
  pen.drawImage(image, left, top, right - left, bottom - top, 0, 0, width, height);
  const { data } = pen.getImageData(0, 0, width, height);
  return { width, height, data };
}

const whole = (image: Image): Box => ({
  left: 0,
  top: 0,
  right: image.width,
  bottom: image.height,
});

/** Radius of the ring that a finger holds over a wire, pixels: half of the wire. */
const REACH = 11;

/** What is seen of the wire in a cavity, that share of its way from the plug, under the photo's own white. */
function seenIn(cavity: string, share: number): SeenWire | null {
  const way = wayOfWire(cavity);
  const [x, y] = way[Math.round(share * way.length)] ?? [0, 0];
  const room = Math.ceil(REACH * SPOT_ROOM + 2);
  const [left, top] = [Math.round(x) - room, Math.round(y) - room];
  const box = { left, top, right: left + 2 * room, bottom: top + 2 * room };
  const white = estimateWhite(pieceOf(photo, whole(photo), 360 / photo.width));
  expect(white).toMatchObject({ from: "neutral", isDoubtful: false });
  return finished(seenWire(pieceOf(photo, box, 1), [x - left, y - top], REACH, white));
}

describe("the made picture of the demo's plug and its wires", () => {
  test.each(MACHINE.wires.map(({ cavity, colour }) => [cavity, colour] as const))(
    "the wire in %s is told as it is noted: %o",
    (cavity, colour) => {
      const seen = seenIn(cavity, 0.8);
      expect(seen?.base.ranked[0]?.code).toBe(colour?.base);
      expect(seen?.tracer?.ranked[0]?.code).toBe(colour?.tracer);
    },
  );

  test("where a stripe lies on the dark side of its wire nothing wrong stands chosen", () => {
    const dark = seenIn("X1:4", 0.6);
    expect(dark?.base.ranked[0]?.code).toBe("BN");
    expect(dark?.isSure).toBe(false);
  });

  test("is what the script draws today, but for what a JPEG and another computer make of it", async () => {
    const drawn = await loadImage(Buffer.from(plugPhoto()));
    expect([drawn.width, drawn.height]).toEqual([photo.width, photo.height]);
    const [a, b] = [pieceOf(photo, whole(photo), 0.25), pieceOf(drawn, whole(drawn), 0.25)];
    const off = a.data.reduce((sum, byte, at) => sum + Math.abs(byte - (b.data[at] ?? 0)), 0);
    expect(off / a.data.length).toBeLessThan(1);
  });

  test("is small enough to carry around", () => {
    expect(sampleBytes(`sweeper/${PLUG_PHOTO}`).length).toBeLessThan(300_000);
  });
});
