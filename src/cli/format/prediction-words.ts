import type { Reading } from "../../job/index.ts";
import type { predictionOf } from "../commands/predict.ts";
import { plainText, tableOf } from "./plain-text.ts";

type Predictions = ReturnType<typeof predictionOf>;
type Value = number | "OL" | null;

const shown = (value: Value) =>
  value === null ? "" : value === "OL" ? value : String(Number(value.toPrecision(4)));

const band = (one: { readonly low: number | null; readonly high: number | null }) =>
  one.low === null || one.high === null ? "" : `${shown(one.low)} to ${shown(one.high)}`;

const UNITS: Readonly<Record<Reading["quantity"], string>> = {
  volts: "V",
  drop: "V",
  ohms: "Ω",
  amps: "A",
};

/** What a meter should show, for a person. */
export function predictionInWords(
  file: string,
  machine: string,
  { readings, cavities }: Predictions,
): string {
  const taken = readings.map((one) => [
    one.id,
    one.floating ? "floating" : shown(one.predicted),
    band(one),
    one.verdict,
  ]);
  const worth = cavities.map((one) => [
    one.cavity,
    `${one.quantity} ${one.red} to ${one.black}`,
    `${shown(one.predicted)} ${one.predicted === null || one.predicted === "OL" ? "" : UNITS[one.quantity]}`.trim(),
    band(one),
    one.proves,
  ]);
  return [
    plainText(`${file}, machine ${machine}`),
    "",
    ...tableOf(["reading", "expected", "band", "verdict"], taken),
    "",
    ...tableOf(["cavity", "reading worth taking", "expected", "band", "what it proves"], worth),
    "",
    "",
  ].join("\n");
}
