import type { DrawnSymbol } from "../drawn-symbol.ts";
import { BARS } from "./bars.ts";
import { BOXES, ZIGZAGS } from "./boxes.ts";
import { CIRCLES } from "./circles.ts";
import { CONNECTORS } from "./connectors.ts";
import { DIODES } from "./diodes.ts";
import { SWITCHES } from "./switches.ts";
import { WINDINGS } from "./windings.ts";

/** Every symbol that is looked for, one for each way of drawing it. */
export const CONVENTIONS: readonly DrawnSymbol[] = [
  ...BARS,
  ...BOXES,
  ...ZIGZAGS,
  ...CIRCLES,
  ...DIODES,
  ...SWITCHES,
  ...CONNECTORS,
  ...WINDINGS,
];
