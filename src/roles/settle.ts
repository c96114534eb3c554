import type { RoleName } from "../job/index.ts";

interface Separator {
  readonly between: readonly [RoleName, RoleName];
  /** `%` stands for the cavity or pin, `@` for the module. */
  readonly reading: string;
}

/**
 * Which reading tells two roles apart (common practice, no source). The first whose two roles both
 * still fit is the one to take: it splits the widest difference first.
 */
const SEPARATORS: readonly Separator[] = [
  {
    between: ["supply", "ground"],
    reading:
      "with @ unplugged and the key on, volts at % to chassis with a test lamp as load: full voltage is a feed; if there is none, take the battery off and read ohms to chassis: next to nothing is a ground",
  },
  {
    between: ["sensor-supply", "sensor-ground"],
    reading:
      "with @ plugged in and the key on, volts at % to chassis: a steady voltage is the sensor's supply, next to nothing is its ground",
  },
  {
    between: ["switched-ground", "input"],
    reading:
      "with @ plugged in and working, amps through % in place of its opened joint: the whole current of the module is a ground, a few milliamps are an input",
  },
  {
    between: ["switched-supply", "input"],
    reading:
      "with @ plugged in and working, amps through % in place of its opened joint: the module's own working current is a feed, a few milliamps are an input",
  },
  {
    between: ["ground", "input"],
    reading:
      "with @ plugged in and working, amps through % in place of its opened joint: working current is a ground, next to none is a coding strap",
  },
  {
    between: ["input", "output"],
    reading:
      "with @ plugged in and every switch on the line at rest, volts at % to chassis while the function is called for: a voltage that comes and goes with it is an output",
  },
  {
    between: ["output", "signal"],
    reading:
      "with @ plugged in and the key on, volts at % to chassis: a voltage that holds steady under load is an output, one that flickers about a middle value is a line between modules",
  },
  {
    between: ["input", "signal"],
    reading:
      "with @ plugged in and the key on, volts at % to chassis while each switch on the line is worked: one that follows a switch is an input",
  },
];

/** The reading that separates the roles still possible at a pin, as a clause; null where none is known. */
export function settlingReading(
  fits: readonly RoleName[],
  at: string,
  module: string,
): string | null {
  const found = SEPARATORS.find((one) => one.between.every((role) => fits.includes(role)));
  return found ? found.reading.replaceAll("%", at).replaceAll("@", module) : null;
}
