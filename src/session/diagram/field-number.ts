/** Factors that a letter in a typed value stands for. */
const FACTORS: Readonly<Record<string, number>> = { m: 1e-3, k: 1e3, K: 1e3, M: 1e6 };

/**
 * Reads a typed value generously: `12,4`, `12.4 V`, `1k2`, `4R7`, `1.5 kΩ`, `0.75mm²`. Null when it
 * is not a number, so that the caller can leave the field as it was.
 */
export function parseFieldNumber(text: string): number | null {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  const infix = /^(-?\d+)([kKMRr])(\d+)$/.exec(plain);
  if (infix) {
    const [, whole, letter, rest] = infix;
    return Number(`${whole}.${rest}`) * (FACTORS[letter as string] ?? 1);
  }
  const match =
    /^(-?(?:\d+\.?\d*|\.\d+))\s*([kKM]|m(?!m|$)|)\s*(?:V|v|A|a|W|w|Ω|Ohms?|ohms?|R|mm2|mm²|m|s|%|°|px|volts?|amps?|watts?|seconds?)?$/.exec(
      plain,
    );
  if (!match) return null;
  return Number(match[1]) * (FACTORS[match[2] ?? ""] ?? 1);
}
