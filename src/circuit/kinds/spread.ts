/** Factors on a nominal resistance that a good part stays within. */
export type Spread = readonly [low: number, high: number];

/**
 * A winding as made, and its copper from a cold morning to a hot machine, together: about -20 to
 * +40 % (common practice, no source). Copper alone at 0.00393 a kelvin (IEC, from memory) makes
 * 0.84 at -20 °C and 1.31 at 100 °C of its ohms at 20 °C; the rest is the maker's tolerance.
 */
export const COPPER: Spread = [0.8, 1.4];

/** A winding whose value nobody has said: the kind's default is only the usual size of such parts. */
export const GUESSED: Spread = [0.4, 2.5];

/** Filaments as made, hot: ±10 % (common practice, no source). */
export const FILAMENT: Spread = [0.9, 1.1];

/**
 * A motor: standing it is its winding, turning it draws far less than its winding would let it
 * (common practice, no source).
 */
export const MOTOR: Spread = [0.8, 10];

/** The spread of a value that was given, or of one that is only the kind's default. */
export const spreadOf = (given: number | undefined, whenGiven: Spread): Spread =>
  given === undefined
    ? [Math.min(GUESSED[0], whenGiven[0]), Math.max(GUESSED[1], whenGiven[1])]
    : whenGiven;
