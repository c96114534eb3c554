import type { Branch } from "./branch.ts";
import { LEAST_OHMS } from "./operating-point.ts";
import type { WorkedCircuit } from "./worked-circuit.ts";

/** A filament's ohms have settled when they change by less than this share. */
const SETTLED = 1e-6;

/** What a filament's ohms were taken to be in the last round, and what its volts then asked for. */
export interface Tried {
  readonly taken: number;
  readonly asked: number;
}

/** Slopes that are followed: a filament fed through resistance asks for up to half of a change. */
const STEEPEST = 0.6;

/**
 * Between cold and hot a filament's ohms go about with the square root of its volts (a lamp's
 * current does: common practice, no source). From the second round on each is taken to where the
 * line through its last two rounds meets what its volts ask for (the secant method).
 */
export function warmFilaments(
  circuit: WorkedCircuit,
  filaments: readonly number[],
  tried: Map<number, Tried>,
): boolean {
  let warmed = false;
  for (const index of filaments) {
    const { acts } = circuit.net.branches[index] as Branch;
    if (acts.is !== "filament") continue;
    const cold = circuit.settings.cold[index] as number;
    const hot = circuit.settings.ohms[index] as number;
    const across = Math.abs(circuit.across(index));
    const asked = Math.max(LEAST_OHMS, cold, hot * Math.sqrt(across / acts.ratedVolts));
    const taken = circuit.ohms(index);
    if (Math.abs(asked - taken) <= SETTLED * asked) continue;
    const last = tried.get(index);
    const slope = last ? (asked - last.asked) / (taken - last.taken) : 0;
    const isLine = Math.abs(slope) <= STEEPEST;
    const next = isLine ? taken + (asked - taken) / (1 - slope) : asked;
    tried.set(index, { taken, asked });
    circuit.set(index, Math.max(LEAST_OHMS, cold, next));
    warmed = true;
  }
  return warmed;
}
