import type { Reading } from "../job/index.ts";
import type { JudgedReading } from "../readings/index.ts";
import { valueInWords } from "./words.ts";

/** `a healthy machine shows 25.2 V (23.4 V to 26.8 V)`. */
export function expectedInWords(
  { quantity }: Pick<Reading, "quantity">,
  { predicted, low, high }: Pick<JudgedReading, "predicted" | "low" | "high">,
): string {
  if (predicted === null) return "on a healthy machine nothing holds this point";
  const band =
    low === null || high === null
      ? ""
      : ` (${valueInWords(quantity, low)} to ${valueInWords(quantity, high)})`;
  return `a healthy machine shows ${valueInWords(quantity, predicted)}${band}`;
}
