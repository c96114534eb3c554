import { deflateSync } from "node:zlib";
import { crc32 } from "../../src/job/zip.ts";

function chunk(type: string, data: Uint8Array): Uint8Array {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** A whole grey PNG; the header may claim another size than the pixels have. */
export function png(width: number, height: number, claim = { width, height }): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(claim.width, 0);
  header.writeUInt32BE(claim.height, 4);
  header[8] = 8;
  const rows = Buffer.alloc((width + 1) * height, 0x80);
  for (let y = 0; y < height; y++) rows[y * (width + 1)] = 0;
  return new Uint8Array(
    Buffer.concat([
      Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
      chunk("IHDR", header),
      chunk("IDAT", deflateSync(rows)),
      chunk("IEND", Buffer.alloc(0)),
    ]),
  );
}
