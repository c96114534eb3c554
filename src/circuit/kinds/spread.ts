/** Factors on a nominal resistance that a good part stays within. */
export type Spread = readonly [low: number, high: number];

/** Copper from a cold morning to a hot machine: about -15 % to +30 % (common practice, no source). */
export const COPPER: Spread = [0.85, 1.3];

/** A winding whose value nobody has said: the kind's default is only the usual size of such parts. */
export const GUESSED: Spread = [0.4, 2.5];

/** Filaments as made, hot: ±10 % (common practice, no source). */
export const FILAMENT: Spread = [0.9, 1.1];

/**
 * A motor: standing it is its winding, turning it draws far less than its winding would let it
 * (common practice, no source).
 */
export const MOTOR: Spread = [0.85, 10];

/** The spread of a value that was given, or of one that is only the kind's default. */
export const spreadOf = (given: number | undefined, whenGiven: Spread): Spread =>
  given === undefined
    ? [Math.min(GUESSED[0], whenGiven[0]), Math.max(GUESSED[1], whenGiven[1])]
    : whenGiven;
