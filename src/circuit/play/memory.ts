import {
  between,
  type Decider,
  decide,
  isActive,
  type OperatingPoint,
  type Wiring,
} from "../solve/index.ts";
import { ASLEEP, type LevelMemory, stepLevel } from "./levels.ts";

/** What relays and modules remember, by the id of what decides. */
export interface Memory {
  /** Pulled in, fed, or closing its path. */
  readonly states: ReadonlyMap<string, boolean>;
  readonly levels: ReadonlyMap<string, LevelMemory>;
  /** Latching relays that have had a pulse, so that it is known how they lie. */
  readonly pulsed: ReadonlySet<string>;
}

/** Nothing has had any current yet. */
export const atRest = ({ deciders }: Wiring): Memory => ({
  states: new Map(deciders.map(({ id }) => [id, false])),
  levels: new Map(deciders.flatMap(({ id, is }) => (is === "level" ? [[id, ASLEEP]] : []))),
  pulsed: new Set(),
});

/** What all relays and modules do at `now` about the voltages they see, all at once. */
export function decideAll(
  { deciders, systemVoltage }: Wiring,
  point: OperatingPoint,
  before: Memory,
  now: number,
): Memory {
  const states = new Map<string, boolean>();
  const levels = new Map<string, LevelMemory>();
  let pulsed = before.pulsed;
  for (const decider of deciders) {
    if (decider.is === "level") {
      const powered = decider.power === null || (before.states.get(decider.power) ?? false);
      const active = powered && isActive(decider, point, systemVoltage);
      const last = before.levels.get(decider.id) ?? ASLEEP;
      const next = stepLevel(decider, last, powered, active, now);
      levels.set(decider.id, next);
      states.set(decider.id, next.closed);
    } else if (decider.is === "coil" && decider.latching) {
      const pulse = pulseOn(decider, point);
      if (pulse !== null && !pulsed.has(decider.id)) pulsed = new Set([...pulsed, decider.id]);
      states.set(decider.id, pulse ?? before.states.get(decider.id) ?? false);
    } else states.set(decider.id, decide(decider, point, before.states, systemVoltage));
  }
  return { states, levels, pulsed };
}

/**
 * A latching relay with one coil is thrown by a pulse with 86 positive and thrown back by one the
 * other way round; anything less leaves it as it lies (common practice, no source).
 */
export function pulseOn(
  { a, b, pullIn }: Extract<Decider, { is: "coil" }>,
  point: OperatingPoint,
): boolean | null {
  // its elements run from 85 to 86
  const volts = between(point, b, a) ?? 0;
  if (Math.abs(volts) < pullIn) return null;
  return volts > 0;
}

/** Equal for equal memories of the same wiring. */
export function keyOf({ states, levels }: Memory): string {
  const bits = [...states.values()].map((state) => (state ? "1" : "0")).join("");
  const timed = [...levels.values()].map(
    ({ powered, active, due }) => `${powered ? (active ? "a" : "p") : ""}${due ?? ""}`,
  );
  return `${bits} ${timed.join(",")}`;
}

/** When the next thing happens by itself, seconds since the play began; null when nothing will. */
export function nextDue({ levels }: Memory): number | null {
  let least: number | null = null;
  for (const { due } of levels.values()) {
    if (due !== null && (least === null || due < least)) least = due;
  }
  return least;
}
