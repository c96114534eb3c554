/**
 * The same JPEG with an Exif segment that notes how the camera was held: a TIFF header (TIFF 6.0), one
 * directory, in it a date, the orientation (CIPA DC-008, tag 0x0112, SHORT) and one more tag.
 */
export function withOrientation(
  jpeg: Uint8Array,
  orientation: number,
  isLittle: boolean,
): Uint8Array {
  const segment = new Uint8Array(2 + 2 + 6 + 8 + 2 + 3 * 12 + 4);
  const view = new DataView(segment.buffer);
  segment.set([0xff, 0xe1], 0);
  view.setUint16(2, segment.length - 2);
  segment.set([0x45, 0x78, 0x69, 0x66, 0, 0], 4);
  const tiff = 10;
  segment.set(isLittle ? [0x49, 0x49] : [0x4d, 0x4d], tiff);
  view.setUint16(tiff + 2, 42, isLittle);
  view.setUint32(tiff + 4, 8, isLittle);
  view.setUint16(tiff + 8, 3, isLittle);
  const entry = (n: number, tag: number, value: number) => {
    const at = tiff + 10 + 12 * n;
    view.setUint16(at, tag, isLittle);
    view.setUint16(at + 2, 3, isLittle);
    view.setUint32(at + 4, 1, isLittle);
    view.setUint16(at + 8, value, isLittle);
  };
  entry(0, 0x0103, 6);
  entry(1, 0x0112, orientation);
  entry(2, 0x0128, 2);
  return Buffer.concat([jpeg.subarray(0, 2), segment, jpeg.subarray(2)]);
}
