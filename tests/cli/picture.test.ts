import { deflateSync } from "node:zlib";
import { createCanvas } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { type Grey, greyOf } from "../../src/scan/index.ts";
import { withOrientation } from "../support/held-jpeg.ts";
import {
  chunk,
  headerChunk,
  madePng,
  type PngKind,
  pngOf,
  SIGNATURE,
} from "../support/made-png.ts";
import { PROGRESSIVE_JPEG } from "../support/progressive-jpeg.ts";
import { complaintOf, difference, greyIn, judged } from "../support/read-picture.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

const SIZE = { width: 37, height: 23 };
const palette = (entries: number) => {
  const random = seededRandom(SEED + entries);
  return Array.from({ length: 3 * entries }, () => random.below(256));
};
const KINDS: readonly (readonly [string, Omit<PngKind, "width" | "height">])[] = [
  ...([1, 2, 4, 8, 16] as const).map(
    (depth) => [`grey, ${depth} bits`, { depth, colourType: 0 }] as const,
  ),
  ...([8, 16] as const).flatMap((depth) => [
    [`colour, ${depth} bits`, { depth, colourType: 2 }] as const,
    [`grey and opacity, ${depth} bits`, { depth, colourType: 4 }] as const,
    [`colour and opacity, ${depth} bits`, { depth, colourType: 6 }] as const,
  ]),
  ...([1, 2, 4, 8] as const).map(
    (depth) =>
      [`palette, ${depth} bits`, { depth, colourType: 3, palette: palette(2 ** depth) }] as const,
  ),
  [
    "palette, some see-through",
    { depth: 2, colourType: 3, palette: palette(4), transparency: [0, 128, 255] },
  ],
  ["grey, one see-through", { depth: 2, colourType: 0, transparency: [0, 1] }],
  ["grey of 16 bits, one see-through", { depth: 16, colourType: 0, transparency: [0, 1] }],
];

describe("PNG", () => {
  test.each(KINDS)(
    "%s: pixel by pixel as a canvas shows it, in lines and interlaced",
    async (_, kind) => {
      for (const isInterlaced of [false, true]) {
        const bytes = madePng(seededRandom(SEED), { ...SIZE, ...kind, isInterlaced });
        // of 16 bits Skia keeps the upper 8, as they are
        const most = kind.depth === 16 ? 2 : 1;
        expect(difference(await greyIn(bytes), await judged(bytes))).toBeLessThanOrEqual(most);
      }
    },
  );

  test("interlaced pictures smaller than a pass", async () => {
    for (let width = 1; width <= 5; width++) {
      for (let height = 1; height <= 5; height++) {
        const kind: PngKind = { width, height, depth: 1, colourType: 0, isInterlaced: true };
        const bytes = madePng(seededRandom(SEED + width), kind);
        expect(difference(await greyIn(bytes), await judged(bytes))).toBe(0);
      }
    }
  });

  test("as a canvas packs them", async () => {
    const canvas = createCanvas(300, 200);
    const pen = canvas.getContext("2d");
    pen.fillStyle = "rgba(200, 30, 60, 0.4)";
    pen.fillRect(20, 30, 150, 90);
    pen.strokeStyle = "black";
    pen.lineWidth = 3.3;
    pen.strokeRect(50, 60, 200, 100);
    const bytes = canvas.toBuffer("image/png");
    expect(difference(await greyIn(bytes), await judged(bytes))).toBeLessThanOrEqual(1);
  });

  test("damaged: refused, and never half of the picture", async () => {
    const kind: PngKind = { ...SIZE, depth: 8, colourType: 0 };
    const whole = madePng(seededRandom(SEED), kind);
    for (let length = 8; length < whole.length - 12; length += 7) {
      expect(await complaintOf(whole.subarray(0, length))).toMatch(/damaged|is not a PNG/);
    }
    for (let at = 60; at < whole.length - 12; at += 41) {
      const changed = Uint8Array.from(whole, (byte, n) => (n === at ? byte ^ 0x10 : byte));
      const said = await complaintOf(changed);
      // A byte of the comment is nobody's business.
      if (said === "nothing") {
        expect(difference(await greyIn(changed), await greyIn(whole))).toBe(0);
      } else expect(said).toContain("damaged");
    }
    const few = deflateSync(new Uint8Array((SIZE.width + 1) * (SIZE.height - 1)));
    expect(await complaintOf(pngOf(kind, few))).toContain("lines of it are missing");
    const odd = new Uint8Array((SIZE.width + 1) * SIZE.height).fill(9);
    expect(await complaintOf(pngOf(kind, deflateSync(odd)))).toContain("PNG does not have");
    const lacking = madePng(seededRandom(SEED), {
      ...SIZE,
      depth: 8,
      colourType: 3,
      palette: palette(9),
    });
    expect(await complaintOf(lacking)).toContain("palette lacks");
  });

  test("what unpacks to far more than its size is read no further", async () => {
    const kind: PngKind = { ...SIZE, depth: 8, colourType: 0 };
    const much = deflateSync(new Uint8Array(64 * 1024 * 1024));
    const before = process.memoryUsage().arrayBuffers;
    const grey = await greyIn(pngOf(kind, much));
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(16 * 1024 * 1024);
    expect(grey.data.every((value) => value === 0)).toBe(true);
  });

  test("too large by its header: refused before anything is unpacked", async () => {
    const kind: PngKind = { width: 20_000, height: 20_000, depth: 8, colourType: 0 };
    const bytes = Buffer.concat([SIGNATURE, headerChunk(kind), chunk("IDAT", new Uint8Array(4))]);
    expect(await complaintOf(bytes)).toContain("more than 100 megapixels");
  });
});

/** A page with lines and coloured patches, one corner marked. */
function drawn() {
  const canvas = createCanvas(70, 50);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "white";
  pen.fillRect(0, 0, 70, 50);
  pen.fillStyle = "black";
  pen.fillRect(4, 4, 20, 9);
  pen.fillStyle = "#b03020";
  pen.fillRect(40, 20, 22, 24);
  pen.strokeRect(10.5, 20.5, 25, 20);
  return canvas;
}

describe("JPEG", () => {
  // Skia mixes the coarser samples of colour with their neighbours and jpeg-js does not; brightness,
  // which is all that lines are followed by, differs by the rounding of the two.
  test("as a canvas shows it, but for a step or two of rounding at each pixel", async () => {
    for (const quality of [40, 75, 95]) {
      const bytes = drawn().toBuffer("image/jpeg", quality);
      const [ours, theirs] = [await greyIn(bytes), await judged(bytes)];
      const sum = ours.data.reduce(
        (all, value, at) => all + Math.abs(value - (theirs.data[at] ?? 0)),
        0,
      );
      expect(difference(ours, theirs)).toBeLessThanOrEqual(12);
      expect(sum / ours.data.length).toBeLessThan(0.8);
    }
  });

  test("in grey, and with colour at every pixel: to two steps", async () => {
    const grey = createCanvas(70, 50);
    const pen = grey.getContext("2d");
    pen.fillStyle = "white";
    pen.fillRect(0, 0, 70, 50);
    pen.lineWidth = 2.6;
    pen.strokeRect(10.2, 8.7, 40, 31);
    const bytes = grey.toBuffer("image/jpeg", 80);
    expect(difference(await greyIn(bytes), await judged(bytes))).toBeLessThanOrEqual(2);
  });

  test("that comes sharper scan by scan", async () => {
    const [ours, theirs] = [await greyIn(PROGRESSIVE_JPEG), await judged(PROGRESSIVE_JPEG)];
    expect(difference(ours, theirs)).toBeLessThanOrEqual(12);
    expect(ours.data[11 * 40 + 10]).toBeLessThan(20);
    expect(ours.data[5 * 40 + 30]).toBeGreaterThan(235);
  });

  test.each([1, 2, 3, 4, 5, 6, 7, 8] as const)(
    "held as Exif orientation %i says, in either order of bytes",
    async (orientation) => {
      const bytes = drawn().toBuffer("image/jpeg", 90);
      const plain = await greyIn(bytes);
      for (const isLittle of [true, false]) {
        const held = withOrientation(bytes, orientation, isLittle);
        const grey = await greyIn(held);
        expect(difference(grey, turned(plain, orientation))).toBe(0);
        expect(difference(grey, await judged(held))).toBeLessThanOrEqual(12);
      }
    },
  );

  test("an orientation that nobody knows, or notes that are cut short, change nothing", async () => {
    const bytes = drawn().toBuffer("image/jpeg", 90);
    const plain = await greyIn(bytes);
    for (const odd of [0, 9, 65535]) {
      expect(difference(await greyIn(withOrientation(bytes, odd, true)), plain)).toBe(0);
    }
    const held = withOrientation(bytes, 6, true);
    for (const at of [12, 14, 16]) {
      const changed = Uint8Array.from(held, (byte, n) => (n === at ? 0xee : byte));
      expect(difference(await greyIn(changed), plain)).toBe(0);
    }
  });

  test("cut off: refused, and never half of the picture", async () => {
    const bytes = drawn().toBuffer("image/jpeg", 90);
    for (let length = 3; length < bytes.length - 2; length += 11) {
      expect(await complaintOf(bytes.subarray(0, length))).toMatch(/damaged|is not a PNG/);
    }
  });

  test("scans without end are refused", async () => {
    const bytes = drawn().toBuffer("image/jpeg", 90);
    const scans = Uint8Array.from({ length: 800 }, (_, n) => (n % 2 === 0 ? 0xff : 0xda));
    expect(await complaintOf(Buffer.concat([bytes, scans]))).toContain("too many scans");
  });
});

/** Where each pixel of a turned picture comes from, as the Exif standard's table draws it. */
function turned(from: Grey, orientation: number): Grey {
  const { width, height } = from;
  const source = (x: number, y: number): readonly [number, number] =>
    (
      [
        [x, y],
        [width - 1 - x, y],
        [width - 1 - x, height - 1 - y],
        [x, height - 1 - y],
        [y, x],
        [y, height - 1 - x],
        [width - 1 - y, height - 1 - x],
        [width - 1 - y, x],
      ] as const
    )[orientation - 1] ?? [x, y];
  const out = orientation >= 5 ? greyOf(height, width) : greyOf(width, height);
  for (let y = 0; y < out.height; y++) {
    for (let x = 0; x < out.width; x++) {
      const [u, v] = source(x, y);
      out.data[y * out.width + x] = from.data[v * width + u] ?? 0;
    }
  }
  return out;
}

describe("other files", () => {
  test("WebP is named; what is no picture, or empty, is told as such", async () => {
    expect(await complaintOf(drawn().toBuffer("image/webp"))).toBe(
      "a WebP picture is not read here: save it as PNG or JPEG",
    );
    for (const bytes of [new Uint8Array(), Buffer.from("GIF89a and so on"), Buffer.alloc(9000)]) {
      expect(await complaintOf(bytes)).toContain("is not a PNG, JPEG or WebP picture");
    }
  });
});
