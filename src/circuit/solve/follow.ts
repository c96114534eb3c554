import type { Branch, Decider } from "./branch.ts";
import { conducting, type Net, netWith, type Settings } from "./net.ts";
import type { OperatingPoint } from "./operating-point.ts";
import type { Wiring } from "./wiring.ts";
import { WorkedCircuit } from "./worked-circuit.ts";

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
export const HIGH_LEVEL = 0.5;
export const LOW_LEVEL = 0.3;

/**
 * Relays and modules follow, all at once, until nothing changes or a state comes back: from rest,
 * or from what they did `before`, as when somebody turns a switch now.
 */
export function follow(
  wiring: Wiring,
  extra: readonly Branch[] = [],
  before: Settled | null = null,
): Settled {
  const net = netWith(wiring.net, extra);
  const { branches } = net;
  let states = statesOf(wiring, before?.states);
  const first = conducting(net, states, wiring.positions);
  const start = before && extra.length === 0 ? before.point : null;
  const circuit = WorkedCircuit.from(startFrom(net, start, false), net, false, first);
  const seen = new Map<string, number>();
  const history: Uint8Array[] = [];
  const settled = (oscillating: readonly string[]): Settled => ({
    point: circuit.point(),
    branches,
    states: new Map(wiring.deciders.map(({ id }, at) => [id, states[at] === 1])),
    oscillating,
  });
  for (;;) {
    const next = new Uint8Array(states.length);
    let changed = false;
    wiring.deciders.forEach((decider, at) => {
      const power = decider.is === "level" ? decider.power : null;
      const isPowered = power === null || states[net.deciderAt.get(power) ?? -1] === 1;
      if (acts(decider, circuit, states[at] === 1, isPowered, wiring.systemVoltage)) next[at] = 1;
      if (next[at] !== states[at]) changed = true;
    });
    if (!changed) return settled([]);
    const key = next.join("");
    const last = seen.get(key);
    if (last !== undefined) {
      const cycle = history.slice(last);
      const moves = (at: number) => cycle.some((state) => state[at] !== next[at]);
      return settled(wiring.deciders.flatMap(({ id }, at) => (moves(at) ? [id] : [])));
    }
    seen.set(key, history.length);
    history.push(next);
    states = next;
    circuit.turn(conducting(net, states, wiring.positions));
  }
}

const statesOf = (
  { deciders }: Wiring,
  states: ReadonlyMap<string, boolean> | undefined,
): Uint8Array => Uint8Array.from(deciders, ({ id }) => (states?.get(id) ? 1 : 0));

/** A point to start from: the one given where it is of this net, else the one at rest. */
const startFrom = (net: Net, point: OperatingPoint | null, quiet: boolean): OperatingPoint =>
  point?.mesh.plan === net.plan ? point : net.start(quiet);

/**
 * The operating point with relays and modules held as they are, and whatever `isOpen`, or is among
 * those, taken away.
 * `settings`: of the wiring's branches and then of those of `extra`; nominal where null.
 * `near`: a point found in the same way shortly before, to start from; saves time where little has
 * changed, and makes no difference beyond the accuracy of filaments.
 */
export function held(
  wiring: Wiring,
  states: ReadonlyMap<string, boolean>,
  extra: readonly Branch[],
  settings: Settings | null = null,
  quiet = false,
  isOpen: ((branch: Branch) => boolean) | ReadonlySet<Branch> | null = null,
  near: OperatingPoint | null = null,
): OperatingPoint {
  const net = netWith(wiring.net, extra);
  const { closed, doubtful } = conducting(net, statesOf(wiring, states), wiring.positions);
  const opened: number[] = [];
  const open = (index: number) => {
    if (index < 0) return;
    closed[index] = 0;
    opened.push(index);
  };
  if (typeof isOpen === "function")
    net.branches.forEach((branch, index) => {
      if (isOpen(branch)) open(index);
    });
  else for (const branch of isOpen ?? []) open(net.branches.indexOf(branch));
  const found = {
    closed,
    doubtful: opened.length === 0 ? doubtful : [...doubtful, ...opened],
  };
  const circuit =
    settings === null
      ? WorkedCircuit.from(startFrom(net, near, quiet), net, quiet, found)
      : WorkedCircuit.begun(net, settings, quiet, found);
  return circuit.point();
}

/** Node voltages, as far as deciders look at them. */
type Seen = Pick<OperatingPoint, "factored" | "volts">;

/** Volts of `a` over `b`; null where nothing ties them together. */
export function between({ factored: { piece }, volts }: Seen, a: number, b: number): number | null {
  return piece[a] === piece[b] ? (volts[a] as number) - (volts[b] as number) : null;
}

/** What a decider does about the voltages it sees, `states` being what all did until now. */
export function decide(
  decider: Decider,
  point: OperatingPoint,
  states: ReadonlyMap<string, boolean>,
  systemVoltage: number,
): boolean {
  const power = decider.is === "level" ? decider.power : null;
  const isPowered = power === null || (states.get(power) ?? false);
  return acts(decider, point, states.get(decider.id) ?? false, isPowered, systemVoltage);
}

/** `did`: what it did until now. `isPowered`: whether what feeds it was fed until now. */
function acts(
  decider: Decider,
  point: Seen,
  did: boolean,
  isPowered: boolean,
  systemVoltage: number,
): boolean {
  switch (decider.is) {
    case "coil": {
      const volts = Math.abs(between(point, decider.a, decider.b) ?? 0);
      if (volts >= decider.pullIn) return true;
      return volts < decider.dropOut ? false : did;
    }
    case "fed":
      return decider.pairs.some(([a, b]) => (between(point, a, b) ?? 0) >= decider.minVolts);
    case "level": {
      if (!isPowered) return false;
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
  point: Seen,
  systemVoltage: number,
): boolean {
  if (input === null) return true;
  for (const ground of grounds) {
    const volts = between(point, input, ground);
    if (volts === null) continue;
    return active === "high"
      ? volts >= HIGH_LEVEL * systemVoltage
      : volts <= LOW_LEVEL * systemVoltage;
  }
  return false;
}
