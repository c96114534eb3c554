import { crc32 } from "../../job/index.ts";
import type { Rgba } from "../../scan/index.ts";

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const GREYSCALE = 0;

/**
 * A black and white picture as PNG at a bit a pixel (ISO/IEC 15948): a canvas writes 24 of them. What
 * is darker than half is black.
 */
export async function bitsPng({ width, height, data }: Rgba): Promise<Uint8Array> {
  const header = new DataView(new ArrayBuffer(13));
  header.setUint32(0, width);
  header.setUint32(4, height);
  header.setUint8(8, 1);
  header.setUint8(9, GREYSCALE);
  const stride = 1 + Math.ceil(width / 8);
  // Each row begins with its filter: 0, none.
  const rows = new Uint8Array(stride * height);
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at += 4) {
      if ((data[at] as number) < 128) continue;
      const byte = y * stride + 1 + (x >> 3);
      rows[byte] = (rows[byte] as number) | (0x80 >> (x & 7));
    }
  }
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk("IHDR", new Uint8Array(header.buffer)),
    chunk("IDAT", await deflated(rows)),
    chunk("IEND", new Uint8Array(0)),
  ];
  const png = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let from = 0;
  for (const part of parts) {
    png.set(part, from);
    from += part.length;
  }
  return png;
}

async function deflated(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  // `deflate` is the zlib format, which PNG wants.
  const { readable, writable } = new CompressionStream("deflate");
  const writer = writable.getWriter();
  const written = writer.write(bytes).then(() => writer.close());
  const all = await new Response(readable).arrayBuffer();
  await written;
  return new Uint8Array(all);
}

function chunk(name: string, content: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(content.length + 12);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, content.length);
  for (let at = 0; at < 4; at++) bytes[4 + at] = name.charCodeAt(at);
  bytes.set(content, 8);
  view.setUint32(content.length + 8, crc32(bytes.subarray(4, content.length + 8)));
  return bytes;
}
