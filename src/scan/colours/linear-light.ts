const LINEAR = Float64Array.from({ length: 256 }, (_, byte) => {
  const share = byte / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});

/** Linear light of a byte of sRGB (IEC 61966-2-1), 0 to 1. */
export const linear = (byte: number): number => LINEAR[byte] as number;
