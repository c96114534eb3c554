import type { Grey } from "../raster.ts";

/** A grey picture as a file that the reader knows: portable graymap, binary (`P5` of Netpbm), 8 bits. */
export function pgmOf({ width, height, data }: Grey): Uint8Array {
  const head = `P5\n${width} ${height}\n255\n`;
  const bytes = new Uint8Array(head.length + data.length);
  for (let at = 0; at < head.length; at++) bytes[at] = head.charCodeAt(at);
  bytes.set(data, head.length);
  return bytes;
}
