/**
 * What a good circuit drops at most along each leg while its load is on, V. Attributed to SAE in the
 * trade's books; common practice, no single source.
 */
export const USUAL_DROPS = {
  "small-connection": 0,
  "high-current-connection": 0.1,
  "high-current-cable": 0.2,
  contacts: 0.3,
  "ground-path": 0.1,
} as const;

export type UsualDrop = keyof typeof USUAL_DROPS;

/** In words, as the end of "usual limit ...". */
export const USUAL_DROP_NAMES: Readonly<Record<UsualDrop, string>> = {
  "small-connection": "a small connection",
  "high-current-connection": "a high-current connection",
  "high-current-cable": "a high-current cable",
  contacts: "switch or solenoid contacts",
  "ground-path": "the ground path",
};

export const USUAL_DROPS_SOURCE = "attributed to SAE, common practice";
