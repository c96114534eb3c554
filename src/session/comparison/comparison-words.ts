import { formatColour, gaugeName } from "../../standards/index.ts";
import type { CellMark, ComparisonRow, MachineCell, Trait, WireLook } from "./comparison.ts";

const MARK_WORDS: Readonly<Record<CellMark, string>> = {
  colour: "colour not as drawn",
  turned: "base and tracer exchanged",
  number: "number not as drawn",
  size: "size not as drawn",
};

export const wordsForMark = (mark: CellMark): string => MARK_WORDS[mark];

const TRAIT_WORDS: Readonly<Record<Trait, string>> = {
  colour: "colours",
  number: "numbers",
  size: "sizes",
  "printed word": "verdicts on the word",
  meter: "what the meter says",
  reading: "readings",
};

/** `machines differ: colours, readings`; empty where they are alike as far as is known. */
export const wordsForAmong = ({ among }: ComparisonRow): string =>
  among.length === 0 ? "" : `machines differ: ${among.map((one) => TRAIT_WORDS[one]).join(", ")}`;

/** `BNBK 112 1.5 mm²`, `RD AWG 16`; empty where nothing is said. */
export const wordsForLook = ({ colour, number, mm2, awg }: WireLook): string =>
  [
    colour ? formatColour(colour) : "",
    number ?? "",
    mm2 === null ? "" : `${mm2} mm²`,
    awg === null ? "" : `AWG ${gaugeName(awg)}`,
  ]
    .filter((word) => word !== "")
    .join(" ");

/** `24.10 V, confirmed, and 2 more`; empty where none was taken. */
export function wordsForReading({ reading }: MachineCell): string {
  if (!reading) return "";
  const more = reading.others === 0 ? [] : [`and ${reading.others} more`];
  return [reading.value, reading.words, ...more].filter((word) => word !== "").join(", ");
}
