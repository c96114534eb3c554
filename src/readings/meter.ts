import type { Acts } from "../circuit/index.ts";

/** Input of a common digital meter, Ω (Kuphaldt's and the trade's usual figure). */
export const METER_OHMS = 10e6;
export const VOLTMETER: Acts = { is: "ohmic", ohms: METER_OHMS, low: METER_OHMS, high: METER_OHMS };

/** An ammeter's shunt with its leads, Ω (common practice, no source). */
export const SHUNT_OHMS = 0.02;
export const AMMETER = {
  is: "ohmic",
  ohms: SHUNT_OHMS,
  low: 0.005,
  high: 0.1,
} as const satisfies Acts;

/** Highest that common meters take: 1,000 V, and 20 A for half a minute. */
export const MOST_VOLTS = 1000;
export const MOST_AMPS = 20;
/** Above this an ohmmeter shows OL, Ω. */
export const MOST_OHMS = 40e6;
/** Both leads of an ohmmeter together, Ω, at most. */
export const LEADS_OHMS = 0.5;
/** What leads that were measured together may differ by the next time, Ω (common practice, no source). */
export const LEADS_REPEAT = 0.1;

/** Share of system voltage that ghost volts at a point which nothing holds may show (our own, cautious). */
export const GHOST_SHARE = 0.25;
/** Circuits that should be unrelated read over 5,000 Ω (US Army TM 5-3805-291-23-1). */
export const UNRELATED_OHMS = 5000;

/** A bulb on two leads, 2 to 5 W at any system voltage (common practice, no source). */
const TEST_LAMP_WATTS = 3;
export const testLamp = (systemVoltage: number): Acts => {
  const hot = systemVoltage ** 2 / TEST_LAMP_WATTS;
  return {
    is: "filament",
    hot,
    cold: hot / 10,
    ratedVolts: systemVoltage,
    spread: [0.6, 1.5],
  };
};

/** What a meter adds of its own: a share of the value and a few digits. */
export const METER_ERROR = {
  volts: { share: 0.01, digits: 0.05 },
  drop: { share: 0.01, digits: 0.02 },
  amps: { share: 0.015, digits: 0.02 },
  ohms: { share: 0.01, digits: 0.3 },
} as const;
