import type { Decider } from "../solve/index.ts";

export type Level = Extract<Decider, { is: "level" }>;

/** What a module's path remembers from one moment to the next. */
export interface LevelMemory {
  readonly powered: boolean;
  /** Whether its input was at its active level; false while it has no power. */
  readonly active: boolean;
  readonly closed: boolean;
  /** When it acts by itself, seconds since the play began; null while nothing is timed. */
  readonly due: number | null;
}

/** Has no power, or had none until now: what is on its input when it wakes is no edge. */
export const ASLEEP: LevelMemory = { powered: false, active: false, closed: false, due: null };

/** A delay of which nobody has said how long (common practice, no source). */
const USUAL_DELAY = 1;
/**
 * Half a period of a flasher of which nobody has said how fast: about 85 flashes a minute, within
 * the 60 to 120 of direction indicators (from memory).
 */
const USUAL_HALF_FLASH = 0.35;

/** Nothing that a person would call a delay or a flash is faster (our own). */
const LEAST_SECONDS = 0.01;

/** Seconds of a delay, or of half a period of a flasher. */
export const secondsOf = ({ does, seconds }: Level): number =>
  Math.max(LEAST_SECONDS, seconds ?? (does === "flash" ? USUAL_HALF_FLASH : USUAL_DELAY));

/** Times are kept to the microsecond, so that sums of them compare. */
export const tick = (seconds: number): number => Math.round(seconds * 1e6) / 1e6;

/** What a path does at `now`, its module powered and its input active or not. */
export function stepLevel(
  level: Level,
  before: LevelMemory,
  powered: boolean,
  active: boolean,
  now: number,
): LevelMemory {
  if (!powered) return ASLEEP;
  const later = () => tick(now + secondsOf(level));
  const keep = { powered, active };
  const wasActive = before.powered && before.active;
  const ranOut = before.due !== null && before.due <= now;
  switch (level.does) {
    case "follow":
      return { ...keep, closed: active, due: null };
    case "invert":
      return { ...keep, closed: !active, due: null };
    case "toggle": {
      const edge = before.powered && active && !before.active;
      return { ...keep, closed: edge ? !before.closed : before.closed, due: null };
    }
    case "delay-on":
      if (!active) return { ...keep, closed: false, due: null };
      if (!wasActive) return { ...keep, closed: false, due: later() };
      return ranOut
        ? { ...keep, closed: true, due: null }
        : { ...keep, closed: before.closed, due: before.due };
    case "delay-off":
      if (active) return { ...keep, closed: true, due: null };
      if (wasActive) return { ...keep, closed: true, due: later() };
      return ranOut
        ? { ...keep, closed: false, due: null }
        : { ...keep, closed: before.closed, due: before.due };
    case "flash":
      if (!active) return { ...keep, closed: false, due: null };
      if (!wasActive) return { ...keep, closed: true, due: later() };
      return ranOut
        ? { ...keep, closed: !before.closed, due: later() }
        : { ...keep, closed: before.closed, due: before.due };
  }
}
