/** Factors on a nominal resistance that a good part stays within. */
export type Spread = readonly [low: number, high: number];

/**
 * A winding as made, and its copper from a cold morning to a hot machine, together: about -20 to
 * +40 % (common practice, no source). Copper alone at 0.00393 a kelvin (IEC, from memory) makes
 * 0.84 at -20 °C and 1.31 at 100 °C of its ohms at 20 °C; the rest is the maker's tolerance.
 */
export const COPPER: Spread = [0.8, 1.4];

/** Filaments as made, hot: ±10 % (common practice, no source). */
export const FILAMENT: Spread = [0.9, 1.1];

/**
 * A motor: standing it is its winding, turning it draws far less than its winding would let it
 * (common practice, no source).
 */
export const MOTOR: Spread = [0.8, 10];

/**
 * Factors on a kind's usual resistance between which any part of that kind lies, of whatever size and
 * at work: what a part whose value nobody has said may be. No verdict may follow from less (all of
 * them common practice, no source; the sizes that they come from stand beside each).
 */
export const ANY = {
  /** Bulbs of 0.5 W to 150 W; usual 21 W. */
  lamp: [0.13, 46],
  /** An indicator of 0.1 W to a work lamp of 150 W; usual 5 W. */
  led: [0.03, 60],
  /** A heavy contactor's coil of 30 W to a signal relay's of 0.1 W; usual 1.8 W. */
  coil: [0.04, 25],
  /** A starter's pull winding, 600 W, to a pilot valve of 1 W; usual 20 W. */
  solenoid: [0.03, 30],
  /**
   * A winding of 1.2 kW standing to a 1 W actuator turning; usual 60 W. A starter's has less, but
   * so little that an ohmmeter can't tell it from this, and cranking has its own limits of the battery.
   */
  motor: [0.05, 600],
  /** An intake heater of 2.5 kW to a 2 W one; usual 100 W. */
  heater: [0.03, 70],
  /** An air horn's compressor of 250 W to a 0.25 W buzzer; usual 50 W. */
  horn: [0.15, 300],
  /** 0.1 Ω to 100 kΩ; usual 1 kΩ. */
  resistor: [1e-4, 100],
  /** 200 Ω to 100 kΩ; usual 5 kΩ. */
  track: [0.04, 20],
} as const satisfies Readonly<Record<string, Spread>>;

/** The spread of a load whose value was given, or `any` one of its kind where nobody has said it. */
export const spreadOf = (
  given: number | undefined,
  whenGiven: Spread,
  any: Spread,
): { readonly spread: Spread; readonly unsaid?: Spread } =>
  given === undefined ? { spread: any, unsaid: any } : { spread: whenGiven };
