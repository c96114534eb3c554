import type { Branch, Decider } from "./branch.ts";
import { conducting, netWith, settingsOf } from "./net.ts";
import { nominal, type OperatingPoint, operate, type Setting } from "./operating-point.ts";
import type { Wiring } from "./wiring.ts";

/** A state of the machine in which every relay and module agrees with the voltages it sees. */
export interface Settled {
  readonly point: OperatingPoint;
  readonly branches: readonly Branch[];
  /** Id of a decider to whether it is pulled in, fed, or closing its path. */
  readonly states: ReadonlyMap<string, boolean>;
  /** Deciders that never come to rest. */
  readonly oscillating: readonly string[];
}

/** Shares of system voltage above which an input counts as high, below which as low (common practice). */
const HIGH = 0.5;
const LOW = 0.3;

/** Relays and modules follow from rest, all at once, until nothing changes or a state comes back. */
export function follow(
  wiring: Wiring,
  extra: readonly Branch[] = [],
  setting: (branch: Branch) => Setting = nominal,
): Settled {
  const net = netWith(wiring.net, extra);
  const { branches } = net;
  const settings = setting === nominal ? net.nominal : settingsOf(branches, setting);
  let states = new Map(wiring.deciders.map((decider) => [decider.id, false]));
  let from = setting === nominal ? net.start(false) : null;
  const seen = new Map<string, number>();
  const history: Map<string, boolean>[] = [];
  for (;;) {
    const closed = conducting(net, states, wiring.positions);
    const point = operate(net, closed, settings, false, from);
    from = point;
    const next = new Map<string, boolean>();
    let changed = false;
    for (const decider of wiring.deciders) {
      const state = decide(decider, point, states, wiring.systemVoltage);
      next.set(decider.id, state);
      if (state !== states.get(decider.id)) changed = true;
    }
    if (!changed) return { point, branches, states, oscillating: [] };
    const key = keyOf(next);
    const before = seen.get(key);
    if (before !== undefined) {
      const cycle = history.slice(before);
      const oscillating = [...next.keys()].filter((id) =>
        cycle.some((state) => state.get(id) !== next.get(id)),
      );
      return { point, branches, states, oscillating };
    }
    seen.set(key, history.length);
    history.push(next);
    states = next;
  }
}

/** The operating point with relays and modules held as they are, and whatever `isOpen` taken away. */
export function held(
  wiring: Wiring,
  states: ReadonlyMap<string, boolean>,
  extra: readonly Branch[],
  setting: (branch: Branch) => Setting = nominal,
  quiet = false,
  isOpen: ((branch: Branch) => boolean) | null = null,
): OperatingPoint {
  const net = netWith(wiring.net, extra);
  const closed = conducting(net, states, wiring.positions);
  if (isOpen !== null) {
    net.branches.forEach((branch, index) => {
      if (isOpen(branch)) closed[index] = 0;
    });
  }
  return setting === nominal
    ? operate(net, closed, net.nominal, quiet, net.start(quiet))
    : operate(net, closed, settingsOf(net.branches, setting), quiet, null);
}

const keyOf = (states: ReadonlyMap<string, boolean>) =>
  [...states.values()].map((state) => (state ? "1" : "0")).join("");

/** Volts of `a` over `b`; null where nothing ties them together. */
export function between(point: OperatingPoint, a: number, b: number): number | null {
  if (point.factored.piece[a] !== point.factored.piece[b]) return null;
  return (point.volts[a] as number) - (point.volts[b] as number);
}

/** What a decider does about the voltages it sees, `states` being what all did until now. */
export function decide(
  decider: Decider,
  point: OperatingPoint,
  states: ReadonlyMap<string, boolean>,
  systemVoltage: number,
): boolean {
  switch (decider.is) {
    case "coil": {
      const volts = Math.abs(between(point, decider.a, decider.b) ?? 0);
      if (volts >= decider.pullIn) return true;
      return volts < decider.dropOut ? false : (states.get(decider.id) ?? false);
    }
    case "fed":
      return decider.pairs.some(([a, b]) => (between(point, a, b) ?? 0) >= decider.minVolts);
    case "level": {
      if (decider.power !== null && !states.get(decider.power)) return false;
      const active = isActive(decider, point, systemVoltage);
      switch (decider.does) {
        case "follow":
        // long after: a delay has run out
        case "delay-on":
        case "delay-off":
          return active;
        case "invert":
          return !active;
        case "toggle":
        case "flash":
          return false;
      }
    }
  }
}

/** Whether a module's input is at its active level. */
export function isActive(
  { input, grounds, active }: Extract<Decider, { is: "level" }>,
  point: OperatingPoint,
  systemVoltage: number,
): boolean {
  if (input === null) return true;
  const volts = grounds
    .map((ground) => between(point, input, ground))
    .find((found) => found !== null);
  if (volts === undefined || volts === null) return false;
  return active === "high" ? volts >= HIGH * systemVoltage : volts <= LOW * systemVoltage;
}
