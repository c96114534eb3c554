import { readFileSync } from "node:fs";
import { createCanvas } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import { pictureType } from "../../src/job/index.ts";
import { png } from "./pictures.ts";

/** A picture written by an independent encoder. */
const encoded = (
  type: "image/png" | "image/jpeg" | "image/webp",
  width: number,
  height: number,
) => {
  const canvas = createCanvas(width, height);
  const context = canvas.getContext("2d");
  context.fillStyle = "teal";
  context.fillRect(1, 1, width / 2, height / 2);
  const bytes =
    type === "image/png" ? canvas.toBuffer(type) : canvas.toBuffer(type as "image/jpeg", 80);
  return new Uint8Array(bytes);
};

describe("kind and size are read from the bytes", () => {
  test.each([
    ["image/png", 37, 300],
    ["image/jpeg", 301, 43],
    ["image/webp", 129, 517],
  ] as const)("of a %s", (type, width, height) => {
    const header = pictureType(encoded(type, width, height), "a.bin");
    expect(header).toEqual({ ok: true, value: { type, width, height } });
  });

  // RFC 9649, sections 2.6 and 2.7: headers written by hand, since encoders rarely choose these.
  test("of a lossless and of an extended WebP", () => {
    const riff = (fourcc: string, body: number[]) => {
      const head = [...`RIFF\0\0\0\0WEBP${fourcc}\0\0\0\0`].map((c) => c.charCodeAt(0));
      return new Uint8Array([...head, ...body, ...Array(20).fill(0)]);
    };
    // width - 1 = 299 in the low 14 bits, height - 1 = 199 in the next 14
    const bits = 299 + 199 * 2 ** 14;
    const lossless = riff("VP8L", [
      0x2f,
      bits & 255,
      (bits >> 8) & 255,
      (bits >> 16) & 255,
      bits >> 24,
    ]);
    expect(pictureType(lossless, "a")).toMatchObject({ value: { width: 300, height: 200 } });
    const extended = riff("VP8X", [0, 0, 0, 0, 0x57, 0x04, 0, 0xe7, 0x03, 0]);
    expect(pictureType(extended, "a")).toMatchObject({ value: { width: 1112, height: 1000 } });
  });
});

describe("refused with the file's name are", () => {
  const code = (bytes: Uint8Array) => {
    const header = pictureType(bytes, "images/scan.png", "diagram.sheets[0].image.file");
    if (header.ok) return "ok";
    expect(header.issues[0]?.message).toContain("images/scan.png");
    expect(header.issues[0]?.path).toBe("diagram.sheets[0].image.file");
    return header.issues[0]?.code;
  };
  const text = (words: string) => new TextEncoder().encode(words);

  test.each([
    ["nothing at all", new Uint8Array()],
    ["a page", text("<!doctype html><script>alert(1)</script>")],
    ["a vector drawing", text('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
    ["a GIF", text("GIF89a\x01\x00\x01\x00")],
    ["a PDF", text("%PDF-1.7 ".repeat(20))],
    ["the first bytes of a PNG", png(3, 2).slice(0, 11)],
    ["the first bytes of a JPEG", encoded("image/jpeg", 9, 9).slice(0, 20)],
    ["a PNG of no width", png(3, 2, { width: 0, height: 2 })],
    ["this test", new Uint8Array(readFileSync(new URL(import.meta.url)))],
  ])("%s", (_what, bytes) => {
    expect(code(bytes)).toBe("not-a-picture");
  });

  test("a picture that would fill the memory", () => {
    expect(code(png(3, 2, { width: 60_000, height: 60_000 }))).toBe("picture-too-large");
    expect(code(png(3, 2, { width: 0xffffffff, height: 0xffffffff }))).toBe("picture-too-large");
    expect(code(png(3, 2, { width: 9_933, height: 7_016 }))).toBe("ok"); // A1 at 300 dpi
  });
});
