import type { Random } from "../../../src/base/index.ts";

/** A point of the lattice that everything on a made page lies on. */
export type Place = readonly [column: number, row: number];

export interface MadePart {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface MadeTerminal {
  readonly name: string;
  readonly at: Place;
  /** The step that a line takes from it, away from its part. */
  readonly away: Place;
}

export interface MadeNet {
  readonly terminals: readonly MadeTerminal[];
  /** Unit steps of the lattice that this net's lines cover. */
  readonly steps: readonly (readonly [Place, Place])[];
}

export interface MadePage {
  readonly columns: number;
  readonly rows: number;
  readonly parts: readonly MadePart[];
  readonly nets: readonly MadeNet[];
  /** Places where two nets cross without touching. */
  readonly crossings: readonly Place[];
}

const STEPS: readonly Place[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

const key = ([x, y]: Place) => `${x},${y}`;
const plus = (a: Place, b: Place): Place => [a[0] + b[0], a[1] + b[1]];
const edgeKey = (a: Place, b: Place) => [key(a), key(b)].sort().join("-");

/**
 * A page made by rule: boxes with terminals, and nets laid between them one after the other along a
 * lattice. Two nets never share a step; at one place they only ever cross straight. What is joined to
 * what is therefore known, and nothing here knows how lines are followed.
 */
export function makePage(random: Random, columns: number, rows: number): MadePage {
  const parts = placeParts(random, columns, rows);
  const terminals = shuffled(
    random,
    parts.flatMap((part, n) => terminalsOf(random, part, n)),
  );
  const blocked = new Set<string>();
  for (const part of parts) {
    for (let x = part.left; x <= part.right; x++) {
      for (let y = part.top; y <= part.bottom; y++) blocked.add(key([x, y]));
    }
  }
  // A line of another net must not run past a terminal so near that it would touch it.
  for (const { at, away } of terminals) blocked.add(key(plus(at, away)));
  const taken = new Taken();
  const nets: MadeNet[] = [];
  let laid = 0;
  while (terminals.length >= 2) {
    const wanted = Math.min(terminals.length, 2 + random.below(random.chance(0.35) ? 1 : 5));
    const net = layNet(random, ++laid, terminals.splice(0, wanted), blocked, taken, columns, rows);
    if (net) nets.push(net);
  }
  return { columns, rows, parts, nets, crossings: taken.crossings() };
}

function placeParts(random: Random, columns: number, rows: number): MadePart[] {
  const parts: MadePart[] = [];
  const wanted = Math.max(3, Math.floor((columns * rows) / 70));
  for (let trial = 0; trial < wanted * 20 && parts.length < wanted; trial++) {
    const [wide, high] = [1 + random.below(4), 1 + random.below(4)];
    const left = 2 + random.below(Math.max(1, columns - wide - 4));
    const top = 2 + random.below(Math.max(1, rows - high - 4));
    const part = { left, top, right: left + wide, bottom: top + high };
    const isFree = parts.every(
      (other) =>
        part.left > other.right + 3 ||
        other.left > part.right + 3 ||
        part.top > other.bottom + 3 ||
        other.top > part.bottom + 3,
    );
    if (isFree) parts.push(part);
  }
  return parts;
}

/** Terminals on the sides of a part, never on its corners, every one at a place of its own. */
function terminalsOf(random: Random, part: MadePart, n: number): MadeTerminal[] {
  const found: MadeTerminal[] = [];
  const add = (at: Place, away: Place) => {
    if (random.chance(0.75)) found.push({ name: `P${n}:${found.length + 1}`, at, away });
  };
  for (let x = part.left + 1; x < part.right; x++) {
    add([x, part.top], [0, -1]);
    add([x, part.bottom], [0, 1]);
  }
  for (let y = part.top + 1; y < part.bottom; y++) {
    add([part.left, y], [-1, 0]);
    add([part.right, y], [1, 0]);
  }
  return found;
}

/** What lines of the nets laid so far cover. */
class Taken {
  private readonly steps = new Map<string, number>();
  /** Of each place, by net, the steps that leave it. */
  private readonly at = new Map<string, Map<number, Set<number>>>();

  take(net: number, from: Place, to: Place): void {
    this.steps.set(edgeKey(from, to), net);
    this.leave(net, from, directionOf(from, to));
    this.leave(net, to, directionOf(to, from));
  }

  /** Whether a line of `net` may go on from a place in `direction`, having come in by `came`. */
  mayPass(net: number, place: Place, came: number | null, direction: number): boolean {
    if (this.steps.has(edgeKey(place, plus(place, STEPS[direction] as Place)))) return false;
    const others = [...(this.at.get(key(place)) ?? [])].filter(([other]) => other !== net);
    if (others.length === 0) return true;
    if (others.length > 1 || came === null || came !== direction) return false;
    const [, ways] = others[0] as [number, Set<number>];
    // Straight across one that runs straight the other way.
    const isStraight = ways.size === 2 && [...ways].every((way) => way % 2 !== direction % 2);
    return isStraight && !this.has(net, place);
  }

  has(net: number, place: Place): boolean {
    return this.at.get(key(place))?.has(net) ?? false;
  }

  /** Steps of a net that leave a place. */
  ways(net: number, place: Place): number {
    return this.at.get(key(place))?.get(net)?.size ?? 0;
  }

  hasFork(net: number): boolean {
    return [...this.at.values()].some((nets) => nets.get(net)?.size === 3);
  }

  isOnly(net: number, place: Place): boolean {
    return this.has(net, place) && this.at.get(key(place))?.size === 1;
  }

  isFree(place: Place): boolean {
    return !this.at.has(key(place));
  }

  crossings(): Place[] {
    return [...this.at]
      .filter(([, nets]) => nets.size > 1)
      .map(([place]) => place.split(",").map(Number) as unknown as Place);
  }

  private leave(net: number, place: Place, direction: number): void {
    const nets = this.at.get(key(place)) ?? new Map<number, Set<number>>();
    this.at.set(key(place), nets.set(net, (nets.get(net) ?? new Set()).add(direction)));
  }
}

function layNet(
  random: Random,
  net: number,
  terminals: readonly MadeTerminal[],
  blocked: ReadonlySet<string>,
  taken: Taken,
  columns: number,
  rows: number,
): MadeNet | null {
  const [first, ...others] = terminals as [MadeTerminal, ...MadeTerminal[]];
  const own = new Set(terminals.map(({ at, away }) => key(plus(at, away))));
  const mayStand = (place: Place) =>
    place[0] > 0 &&
    place[1] > 0 &&
    place[0] < columns - 1 &&
    place[1] < rows - 1 &&
    (!blocked.has(key(place)) || own.has(key(place)));
  // Some nets are drawn with lines meeting four at a time, which only a dot tells from a crossing.
  const isStarry = random.chance(0.5);
  const steps: (readonly [Place, Place])[] = [];
  const reached: MadeTerminal[] = [first];
  const start = plus(first.at, first.away);
  if (!mayStand(start)) return null;
  for (const terminal of others) {
    const goal = plus(terminal.at, terminal.away);
    const path = findPath(
      random,
      net,
      terminal,
      goal,
      (place) =>
        steps.length === 0
          ? key(place) === key(start)
          : taken.isOnly(net, place) &&
            !isEnd(place) &&
            (!isStarry || taken.ways(net, place) === 3 || !taken.hasFork(net)),
      mayStand,
      taken,
    );
    if (!path) continue;
    if (steps.length === 0) {
      taken.take(net, first.at, start);
      steps.push([first.at, start]);
    }
    for (let n = 1; n < path.length; n++) {
      const [from, to] = [path[n - 1] as Place, path[n] as Place];
      taken.take(net, from, to);
      steps.push([from, to]);
    }
    reached.push(terminal);
  }
  return reached.length < 2 ? null : { terminals: reached, steps };

  function isEnd(place: Place) {
    return terminals.some(({ at }) => key(at) === key(place));
  }
}

/** The cheapest way along free steps, corners costing more than length; null where there is none. */
function findPath(
  random: Random,
  net: number,
  from: MadeTerminal,
  start: Place,
  isGoal: (place: Place) => boolean,
  mayStand: (place: Place) => boolean,
  taken: Taken,
): Place[] | null {
  if (!mayStand(start)) return null;
  const came = STEPS.findIndex(([x, y]) => x === from.away[0] && y === from.away[1]);
  const turnCost = 2 + random.below(6);
  interface State {
    readonly place: Place;
    readonly came: number;
    readonly cost: number;
    readonly before: State | null;
  }
  const first: State = { place: start, came, cost: 0, before: null };
  // The first place outside a terminal belongs to that terminal: nothing is there yet.
  if (!taken.isFree(start) && !isGoal(start)) return null;
  const buckets: State[][] = [[first]];
  const best = new Map<string, number>();
  for (let cost = 0; cost < buckets.length; cost++) {
    for (const state of buckets[cost] ?? []) {
      const id = `${key(state.place)}/${state.came}`;
      if ((best.get(id) ?? Number.POSITIVE_INFINITY) <= cost) continue;
      best.set(id, cost);
      if (isGoal(state.place) && (state.before !== null || key(state.place) === key(start))) {
        const path: Place[] = [];
        for (let at: State | null = state; at; at = at.before) path.push(at.place);
        return [from.at, ...path.reverse()];
      }
      STEPS.forEach((step, direction) => {
        if ((direction + 2) % 4 === state.came) return;
        if (!taken.mayPass(net, state.place, state.came, direction)) return;
        const place = plus(state.place, step);
        if (!mayStand(place)) return;
        // Entering a place of another net is only good for crossing it straight.
        if (!taken.isFree(place) && !taken.has(net, place)) {
          if (!taken.mayPass(net, place, direction, direction)) return;
        }
        const next = cost + 1 + (direction === state.came ? 0 : turnCost);
        buckets[next] ??= [];
        buckets[next].push({ place, came: direction, cost: next, before: state });
      });
    }
  }
  return null;
}

const directionOf = (from: Place, to: Place) =>
  STEPS.findIndex(([x, y]) => from[0] + x === to[0] && from[1] + y === to[1]);

function shuffled<T>(random: Random, list: readonly T[]): T[] {
  const left = [...list];
  const found: T[] = [];
  while (left.length > 0) found.push(...left.splice(random.below(left.length), 1));
  return found;
}
