import { byColours } from "./by-colours.ts";
import { byReadings } from "./by-readings.ts";
import type { Evidence } from "./evidence.ts";
import type { Mislaid } from "./mislaid.ts";
import { asDrawn } from "./tally.ts";

/** What was mistaken at this plug; null where nothing speaks for it. */
export function mislaidAt(evidence: Evidence): Mislaid | null {
  const drawn = asDrawn(evidence);
  return drawn.differ > 0 ? byReadings(evidence, drawn) : byColours(evidence, drawn);
}
