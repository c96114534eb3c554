import { ADOPTED_ROLES } from "./adopted-roles.ts";
import type { Disagreement } from "./disagreement.ts";
import { FUSES } from "./fuses.ts";
import { MISLAID } from "./mislaid.ts";
import { PRINTED_WORDS } from "./printed-words.ts";
import { INVALID_READINGS, READINGS } from "./readings.ts";
import { TIES } from "./ties.ts";
import { TRACING } from "./tracing.ts";
import { WIRE_MARKS } from "./wire-marks.ts";
import { WORDS_ACROSS } from "./words-across.ts";

export type { Disagreement } from "./disagreement.ts";

/** Every kind of disagreement that must be found, family by family. */
export const DISAGREEMENTS: readonly Disagreement[] = [
  ...PRINTED_WORDS,
  ...WORDS_ACROSS,
  ...ADOPTED_ROLES,
  ...WIRE_MARKS,
  ...TIES,
  ...TRACING,
  ...FUSES,
  ...INVALID_READINGS,
  ...READINGS,
  ...MISLAID,
];
