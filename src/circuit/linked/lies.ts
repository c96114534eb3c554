/** What lies on a net, one bit each. */
export const LIES = {
  batteryPlus: 1,
  batteryMinus: 2,
  chassis: 4,
  module: 8,
  chargeSignal: 16,
  untraced: 32,
  /** Something whose feed only the engine or a switch beyond the page decides. */
  sometimesFed: 64,
  /** One pin and no more. */
  alone: 128,
  pageEnd: 256,
} as const;

/** Battery plus, battery minus or chassis: a search through loads ends here. */
export const HARD = LIES.batteryPlus | LIES.batteryMinus | LIES.chassis;
