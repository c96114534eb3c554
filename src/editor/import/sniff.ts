/** What the first bytes of a file say it is; a name or a MIME type handed in is never believed. */
export type FileKind = "image/png" | "image/jpeg" | "image/webp" | "application/pdf";

const ascii = (bytes: Uint8Array, from: number, to: number) =>
  String.fromCharCode(...bytes.subarray(from, to));

/** Null when the bytes are none of the four. A PDF may have up to a kilobyte of rubbish before it. */
export function sniff(bytes: Uint8Array): FileKind | null {
  if (bytes[0] === 0x89 && ascii(bytes, 1, 8) === "PNG\r\n\x1a\n") return "image/png";
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return "image/jpeg";
  if (ascii(bytes, 0, 4) === "RIFF" && ascii(bytes, 8, 12) === "WEBP") return "image/webp";
  if (ascii(bytes, 0, 1024).includes("%PDF-")) return "application/pdf";
  return null;
}
