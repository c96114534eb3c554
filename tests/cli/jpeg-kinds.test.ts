import { expect, test } from "vitest";
import { type JpegKind, jpegHead, madeJpeg } from "../support/made-jpeg.ts";
import { complaintOf, difference, greyIn, judged } from "../support/read-picture.ts";

const tones = (ids: string, ...values: readonly number[]): JpegKind["colours"] =>
  values.map((tone, n) => ({ id: ids.charCodeAt(n), tone }));
const GREEN = [40, 200, 90];
const SIZE = { width: 40, height: 24 };

test.each<[string, Omit<JpegKind, "width" | "height">]>([
  ["brightness alone", { colours: tones("\x01", 77) }],
  ["brightness and two differences", { colours: tones("\x01\x02\x03", 90, 60, 170) }],
  ["the same, marked as JFIF", { isJfif: true, colours: tones("RGB", 90, 60, 170) }],
  ["the same, by Adobe's note", { transform: 1, colours: tones("RGB", 90, 60, 170) }],
  ["red, green and blue by Adobe's note", { transform: 0, colours: tones("abc", ...GREEN) }],
  ["red, green and blue by their names", { colours: tones("RGB", ...GREEN) }],
  ["four inks", { transform: 0, colours: tones("CMYK", 40, 200, 90, 220) }],
  [
    "four inks, three of them as differences",
    { transform: 2, colours: tones("CMYK", 90, 60, 170, 200) },
  ],
  [
    "coarser colours",
    {
      colours: tones("\x01\x02\x03", 90, 60, 170).map((colour, n) =>
        n === 0 ? { ...colour, h: 2, v: 2 } : colour,
      ),
    },
  ],
])("%s: as a canvas shows it", async (_, kind) => {
  const bytes = madeJpeg({ ...SIZE, ...kind });
  expect(difference(await greyIn(bytes), await judged(bytes))).toBeLessThanOrEqual(2);
});

test.each<[string, Partial<JpegKind>, string]>([
  ["lossless", { kind: 0xc3 }, "is packed in a way that is not read here: save it as PNG"],
  ["by arithmetic codes", { kind: 0xc9 }, "is packed in a way that is not read here"],
  ["of 12 bits", { depth: 12 }, "is packed in a way that is not read here"],
  ["of two colours", { colours: tones("ab", 9, 9) }, "does not say what its colours are"],
  ["of four colours, unnamed", { colours: tones("abcd", 9, 9, 9, 9) }, "what its colours are"],
  ["of no colours", { colours: [] }, "the picture is damaged: its header is not whole"],
  ["of no samples", { colours: [{ id: 1, tone: 9, h: 0 }] }, "its header is not whole"],
])("%s: refused with what to do", async (_, kind, said) => {
  const plain = { ...SIZE, colours: tones("\x01", 77) };
  expect(
    await complaintOf(Buffer.concat([jpegHead({ ...plain, ...kind }), Buffer.alloc(99)])),
  ).toContain(said);
});

test("what claims what its bytes cannot hold, or memory cannot: refused before it is unpacked", async () => {
  const colour = tones("\x01\x02\x03", 90, 60, 170);
  const small = jpegHead({ width: 9500, height: 9500, colours: colour });
  const large = Buffer.concat([small, Buffer.alloc(700_000)]);
  const before = process.memoryUsage();
  expect(await complaintOf(small)).toContain("damaged: most of it is missing; save it again");
  expect(await complaintOf(large)).toBe(
    "the JPEG of 9500 by 9500 pixels takes too much memory to unpack: save it as PNG, or smaller",
  );
  const after = process.memoryUsage();
  expect(after.arrayBuffers - before.arrayBuffers).toBeLessThan(16 * 1024 * 1024);
  expect(await complaintOf(jpegHead({ width: 20_000, height: 20_000, colours: colour }))).toContain(
    "20000 by 20000 pixels, more than 100 megapixels: save it smaller",
  );
});
