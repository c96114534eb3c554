/** What a mechanic reads on a true machine, with a meter and leads that are not perfect either. */
import type { Random } from "../../../src/base/index.ts";
import type { Reading } from "../../../src/job/index.ts";
import { type Bent, stateOf } from "./machine-state.ts";
import { settledVolts } from "./settled.ts";
import type { Branch } from "./star-mesh.ts";
import type { TrueMachine } from "./true-machine.ts";

export type Setup = Omit<Reading, "id" | "value">;

/** Input of a common digital meter, Ω; shunt of an ammeter with its leads, Ω (common practice). */
const INPUT_OHMS = 10e6;
const SHUNT = 0.02;
/** An ohmmeter's current, A, too small to open a diode or warm a filament. */
const OHMMETER_AMPS = 1e-4;
const MOST_OHMS = 40e6;
/** A test lamp: a bulb of this many watts at system voltage (common practice, no source). */
const LAMP_WATTS = 3;
/** Volts of nothing that a floating wire picks up, at most (common practice, no source). */
const GHOST = 2;

/** Null where the machine never comes to rest in that state. */
export function measured(
  random: Random,
  machine: TrueMachine,
  setup: Setup,
): Reading["value"] | null {
  const { systemVoltage } = machine.paper.job;
  const state = stateOf(machine, setup.when);
  const red = state.nodeOf(setup.red);
  const black = state.nodeOf(setup.black);
  const off = (share: number) => 1 + share * (2 * random.next() - 1);
  const read = (extra: readonly Branch[], lamp: Bent | null = null): number | null => {
    const volts = settledVolts(state, systemVoltage, [red, black], extra, lamp);
    return volts?.(red, black) ?? null;
  };
  switch (setup.quantity) {
    case "ohms": {
      // a current source: a huge voltage behind a huge resistor
      const far = 1e9;
      const volts = read([{ a: red, b: black, ohms: far, volts: far * OHMMETER_AMPS }]);
      if (volts === null) return null;
      const seen = 1 / (OHMMETER_AMPS / volts - 1 / far);
      const ohms = (seen + 0.1 + 0.2 * random.next()) * off(0.005);
      if (!(ohms > 0) || ohms > MOST_OHMS) return "OL";
      return ohms < 1000 ? round(ohms, 1) : Number(ohms.toPrecision(4));
    }
    case "amps": {
      const volts = read([{ a: red, b: black, ohms: SHUNT, volts: 0 }]);
      return volts === null ? null : round((volts / SHUNT) * off(0.008), 2);
    }
    default: {
      const meter = { a: red, b: black, ohms: INPUT_OHMS, volts: 0 };
      const hot = (systemVoltage ** 2 / LAMP_WATTS) * off(0.2);
      const lamp: Bent | null =
        setup.with === "test-lamp"
          ? { a: red, b: black, is: "filament", ohms: hot, volts: systemVoltage }
          : null;
      const volts = read([meter], lamp);
      if (volts === null) return null;
      if (lamp === null && Math.abs(volts) < 0.02 && random.chance(0.5)) {
        const lifted = read([{ ...meter, volts: 10 }]);
        // a wire that follows the meter's own input hangs on nothing
        if (lifted !== null && lifted > 9) return round(GHOST * random.next(), 2);
      }
      return round(volts * off(0.005) + 0.01 * (2 * random.next() - 1), 2);
    }
  }
}

const round = (value: number, digits: number) => Number(value.toFixed(digits)) + 0;
