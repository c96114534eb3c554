import { USUAL_CAUTIONS, WHO_COMES_FIRST } from "../../readings/index.ts";
import { WIDTH, wrapped } from "./plain.ts";

/** What stands under every answer that proposes a measurement. */
export const cautionLines = (): string[] => [
  "Before you measure",
  ...USUAL_CAUTIONS.flatMap((caution) =>
    wrapped(caution, WIDTH - 4).map((line, n) => (n === 0 ? `  * ${line}` : `    ${line}`)),
  ),
  ...wrapped(WHO_COMES_FIRST, WIDTH),
];
