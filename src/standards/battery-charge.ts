/**
 * State of charge of a 12 V starter battery by its open-circuit volts at rest, at 26.7 °C (80 °F).
 * Source: Battery Council International (BCI), the table for conventional lead-acid batteries.
 * No correction for other temperatures is given here: we have no source for one.
 */
export const BCI_CHARGE_AT_REST: readonly (readonly [volts: number, percent: number])[] = [
  [12.65, 100],
  [12.45, 75],
  [12.24, 50],
  [12.06, 25],
  [11.89, 0],
];

/** °C that the table is for. */
export const BCI_CELSIUS = 26.7;

/** Nominal volts of the battery that the table is for. */
const TABLE_VOLTS = 12;

/**
 * Per cent of charge, 0 to 100, between the table's rows in a straight line; volts count per 12 V
 * of the system, so that of 24 V they are twice the table's.
 */
export function chargeAtRest(volts: number, systemVoltage: number): number {
  const own = (volts * TABLE_VOLTS) / systemVoltage;
  const below = BCI_CHARGE_AT_REST.findIndex(([at]) => own >= at);
  if (below === 0) return 100;
  const lower = BCI_CHARGE_AT_REST[below];
  const upper = BCI_CHARGE_AT_REST[below - 1];
  if (!lower || !upper) return 0;
  const share = (own - lower[0]) / (upper[0] - lower[0]);
  return lower[1] + share * (upper[1] - lower[1]);
}

/** Volts at rest of a system's battery at one row of the table, e.g. 100 or 0 %. */
export function restVolts(percent: 0 | 25 | 50 | 75 | 100, systemVoltage: number): number {
  const row = BCI_CHARGE_AT_REST.find(([, own]) => own === percent);
  return ((row?.[0] ?? Number.NaN) * systemVoltage) / TABLE_VOLTS;
}

/**
 * Volts that a 12 V battery in good order still holds after some 15 s of its test load at about
 * 21 °C (common practice, no source).
 */
const LEAST_UNDER_LOAD = 9.6;
export const LOAD_TEST_CELSIUS = 21;
export const LOAD_TEST_SECONDS = 15;

/** The same for any system voltage: twice as many for 24 V. */
export const leastUnderLoad = (systemVoltage: number): number =>
  (LEAST_UNDER_LOAD * systemVoltage) / TABLE_VOLTS;
