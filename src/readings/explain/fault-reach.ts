import { addTo, Groups } from "../../base/index.ts";
import { type Branch, circuitOf } from "../../circuit/index.ts";
import type { Probe, When } from "../../job/index.ts";
import { pinsOfCavity } from "../cavity-pins.ts";
import { bandIn } from "../predict-volts.ts";
import type { ReadingSetup } from "../prediction.ts";
import { isPrediction, place } from "../probes.ts";
import type { Healthy, Shared } from "../shared.ts";
import type { Reach } from "./explanation.ts";
import { reached, someWay, type Ways, waysOf } from "./ways.ts";

/**
 * What no single fault can make a meter show, decided without naming any fault, so that none can be
 * forgotten: not its ohms, not where it lies, not which relays follow it.
 *
 * 1. Nothing that only resists raises the volts between two points above those of all sources
 *    together (Willson's no-gain theorem).
 * 2. With one source, volts against their usual direction drive the meter's amps along a ring: plus,
 *    black, red, minus, its volts falling all the way, so that no point is on it twice. Something
 *    that opens or corrodes makes no new way. Something that touches what it shouldn't makes one new
 *    step, in one half of the ring; then red, or black, has at most the volts that it has without
 *    that step beyond what the other half allows: where black lies on minus by wires alone, that is
 *    the drop in those wires.
 *
 * Small volts are left out: ghost volts of an open wire, drops of a healthy one.
 */

/** Share of system voltage that ghost volts and healthy drops may reach (our own, cautious). */
const SMALL = 0.25;
/** Amps below which a direction proves nothing (our own, cautious). */
const SMALL_AMPS = 0.25;
/** A battery on any charger stays below this share of its own highest volts (our own, cautious). */
const CHARGED = 1.25;
/** Pairs of such places that are looked at; of more nothing is told. */
const MOST_SPOTS = 40;
/** Relays that follow a fault may switch more loads on: times the healthy drop (our own, cautious). */
const MORE_LOADS = 1.5;

const anything = (untold: string): Reach => ({
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
  untold,
});

/**
 * Null for ohms: a bad contact of a probe or a touching wire gives any of them. A direction is
 * looked into only where `value` lies that way.
 */
export function reachOfFaults(shared: Shared, setup: ReadingSetup, value: number): Reach | null {
  const { quantity, when } = setup;
  if (quantity === "ohms") return null;
  if (when.standIn !== undefined) return anything("a stand-in is fitted");
  if (when.engine !== undefined && when.engine !== "off")
    return anything("the engine turns, and what charges then is not sure");
  const healthy = shared.healthy(when, shared.bench(when));
  const { wiring } = healthy;
  const placed = place(healthy, setup);
  if (isPrediction(placed)) return anything("a probe has no sure place");
  const ground = groundOf(shared, healthy, when);
  const { ways } = ground;
  const out = new Set([...(when.unplugged ?? []), ...(when.removed ?? [])]);
  const sources = wiring.branches.filter(
    ({ acts, owner }) => acts.is === "source" && !out.has(owner ?? ""),
  );
  const unsaid = sources.find(
    ({ element }) => element?.law.is === "source" && element.law.drawsUnsaid,
  );
  if (unsaid) return anything(`what ${unsaid.owner} gives when it fails is not known`);
  const at = (probe: Probe, node: number) =>
    ways.groundEnd(pinsOfCavity(shared.job, probe)[0] ?? probe, node);
  const red = at(setup.red, placed.red);
  const black = at(setup.black, placed.black);
  if (sources.length === 0) return anything("no source is drawn");
  const strange = nearUnknown(ways, [red, black], railsOf(healthy, sources));
  if (strange)
    return anything(
      "something is plugged in there, or a line goes on there, of which nothing is said",
    );
  const most = sources.reduce(
    (sum, { acts }) => sum + (acts.is === "source" ? acts.high * CHARGED : 0),
    0,
  );
  const isAmps = quantity === "amps";
  const limit = isAmps ? Number.POSITIVE_INFINITY : most;
  const wide: Reach = { low: -limit, high: limit, untold: null };
  const [source, second] = sources;
  // which of a lamp's leads is which nobody notes
  if (!source || second || setup.with === "test-lamp") return wide;
  const small = isAmps ? SMALL_AMPS : SMALL * wiring.systemVoltage;
  const reds = spotsOf(ways, setup.red, red);
  const blacks = spotsOf(ways, setup.black, black);
  const never = (from: readonly number[], to: readonly number[]) => {
    const all = from.flatMap((one) => to.map((other) => ({ red: one, black: other, source })));
    if (all.length > MOST_SPOTS) return false;
    return isAmps ? all.every((ends) => hasNoRing(ways, ends)) : isNeverBelow(ground, all, small);
  };
  return {
    low: value < -small && never(reds, blacks) ? -small : -limit,
    high: value > small && never(blacks, reds) ? small : limit,
    untold: null,
  };
}

/** A probe touches the terminal, or a wire's end in it, and either may have lost the rest. The frame is one. */
const spotsOf = (ways: Ways, probe: Probe, node: number): readonly number[] =>
  probe === "chassis" ? [node] : [node, ...ways.behind(node)];

/** What all readings in one state have in common here. */
interface Ground {
  readonly ways: Ways;
  /** The same with every joint good, that of a ground to the frame too. */
  readonly solid: Ways;
  isHeld(upper: number, lower: number, small: number): boolean;
}

const groundOf = (shared: Shared, healthy: Healthy, when: When): Ground =>
  shared.recent(`ground of faults ${JSON.stringify(when)}`, () => {
    const { wires } = circuitOf(shared.job, shared.machine);
    const tied = solidlyTied(healthy);
    const drops = new Map<string, number>();
    const drop = (upper: number, lower: number): number => {
      const key = `${upper} ${lower}`;
      const known = drops.get(key) ?? healthyDrop(healthy, upper, lower);
      drops.set(key, known);
      return known;
    };
    return {
      ways: waysOf(healthy.wiring, shared.parts, wires, "any may be bad"),
      solid: waysOf(healthy.wiring, shared.parts, wires, "good"),
      isHeld: (upper, lower, small) =>
        upper === lower || (tied(upper, lower) && drop(upper, lower) * MORE_LOADS <= small),
    };
  });

interface Ends {
  readonly red: number;
  readonly black: number;
  readonly source: Branch;
}

/** Whether the two halves of a ring exist, and whether both surely pass one point. */
interface Halves {
  readonly toMinus: boolean;
  readonly toBlack: boolean;
  readonly meet: boolean;
}

function halvesOf(ways: Ways, { red, black, source }: Ends): Halves {
  if (red === black) return { toMinus: false, toBlack: false, meet: true };
  const plus = ways.inside(source, "a");
  const minus = ways.inside(source, "b");
  const fromRed = new Set([plus, black]);
  const fromPlus = new Set([minus, red]);
  const toMinus = someWay(ways, red, minus, fromRed);
  const toBlack = someWay(ways, plus, black, fromPlus);
  const shared = toMinus && toBlack ? toMinus.filter((node) => toBlack.includes(node)) : [];
  const meet = shared.some(
    (node) =>
      !someWay(ways, red, minus, new Set([...fromRed, node])) &&
      !someWay(ways, plus, black, new Set([...fromPlus, node])),
  );
  return { toMinus: toMinus !== null, toBlack: toBlack !== null, meet };
}

const hasRing = ({ toMinus, toBlack, meet }: Halves) => toMinus && toBlack && !meet;

/** No ring even with one step more. */
function hasNoRing(ways: Ways, ends: Ends): boolean {
  const { toMinus, toBlack } = halvesOf(ways, ends);
  return !toMinus && !toBlack;
}

/** Whether V(red) − V(black) never falls below −`small` V, whatever single fault there is. */
function isNeverBelow(
  { ways, solid, isHeld }: Ground,
  ends: readonly Ends[],
  small: number,
): boolean {
  const [first] = ends;
  if (!first) return false;
  // something that opens or corrodes: any joint, one that a probe lies in among them
  if (ends.some((one) => hasRing(halvesOf(ways, one)))) return false;
  // something that touches: all joints are good then
  const red = ways.wiringNode(first.red);
  const black = ways.wiringNode(first.black);
  const { source } = first;
  const halves = halvesOf(solid, { red, black, source });
  if (hasRing(halves)) return false;
  const isHeldDown = () => isHeld(black, source.b, small);
  const isHeldUp = () => isHeld(source.a, red, small);
  return (
    (!halves.toMinus && isHeldDown()) ||
    (!halves.toBlack && isHeldUp()) ||
    (isHeldDown() && isHeldUp())
  );
}

/** The most volts that a good machine has between two nodes. */
function healthyDrop(healthy: Healthy, upper: number, lower: number): number {
  const band = bandIn(healthy, [], { red: upper, black: lower });
  return band ? Math.max(Math.abs(band[0]), Math.abs(band[1])) : Number.POSITIVE_INFINITY;
}

/** Nodes that wires, fuses and contacts closed in this state join. */
function solidlyTied({ wiring }: Healthy) {
  const groups = new Groups(wiring.nodeCount);
  for (const { a, b, owner, element, acts, closedIn, gate } of wiring.branches) {
    if (acts.is !== "ohmic" || gate !== null || owner === null) continue;
    const law = element?.law.is;
    const stands = wiring.positions.get(owner);
    const isClosed = law === "contact" && stands !== undefined && closedIn?.includes(stands);
    if (element === null || law === "protection" || isClosed) groups.join(a, b);
  }
  return (a: number, b: number) => groups.of(a) === groups.of(b);
}

/** Nodes of the wires, without any fuse or contact, at either side of a source. */
function railsOf({ wiring }: Healthy, sources: readonly Branch[]): ReadonlySet<number> {
  const next = new Map<number, number[]>();
  for (const { a, b, element, acts } of wiring.branches) {
    if (element !== null || acts.is !== "ohmic") continue;
    addTo(next, a, b);
    addTo(next, b, a);
  }
  return new Set(
    sources.flatMap(({ a, b }) =>
      [a, b].flatMap((node) => [...reached({ next }, node, new Set())]),
    ),
  );
}

/** Whether something unknown lies on the line of a probe: a way leads there that crosses no rail. */
function nearUnknown(ways: Ways, probes: readonly number[], rails: ReadonlySet<number>): boolean {
  if (ways.unknown.size === 0) return false;
  return probes.some(
    (probe) =>
      !rails.has(ways.wiringNode(probe)) &&
      [...reached(ways, probe, rails)].some((node) => ways.unknown.has(node)),
  );
}
