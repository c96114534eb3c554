import { held, influences, nominal, settingsOf, transfer } from "../circuit/index.ts";
import { ownerOf, type Probe, type When } from "../job/index.ts";
import { batteriesOf, idsOff } from "./cavity-pins.ts";
import { fedNets } from "./feed-nets.ts";
import type { Shared } from "./shared.ts";
import { hasUnsaid, isUnsaid, settingBetween } from "./unsaid-values.ts";

/** Loads as drawn may be this much smaller on the machine. */
const LEAST_SHARE = 0.4;

/** Parts whose pins are one net with what they join. */
const JOINS: ReadonlySet<string> = new Set(["splice", "inline", "ground", "offpage"]);

/** How a dead feed is looked through: an ohmmeter does not get through a diode, a test lamp does. */
export interface LooksThrough {
  readonly when: When;
  /** Where the way back is sought. */
  readonly to: Probe;
  readonly isLamp: boolean;
}

/**
 * The fewest ohms that any feed of the machine could show to the way back while it is dead: the
 * loads that hang on it, in parallel. 0 where an unknown part hangs on one, or nothing is drawn.
 */
export const leastFeedOhms = (shared: Shared, { when, to, isLamp }: LooksThrough): number =>
  shared.once(`least feed ohms ${JSON.stringify([when, to, isLamp])}`, () => ({
    ohms: leastOf(shared, { when, to, isLamp }),
  })).ohms;

function leastOf(shared: Shared, { when, to, isLamp }: LooksThrough): number {
  const { network } = shared;
  const feeds = [...fedNets(network)];
  if (feeds.length === 0) return 0;
  const behind = isLamp ? behindDiodes(shared, feeds) : Number.POSITIVE_INFINITY;
  if (behind === 0) return 0;
  const dead: When = {
    ...when,
    removed: [...new Set([...(when.removed ?? []), ...batteriesOf(shared)])],
  };
  const { wiring, settled, doubts } = shared.bench(dead);
  const back = wiring.probe(to);
  if (!back.ok) return 0;
  // a lamp is held to a machine that is on: its other relays may be pulled in
  const states = isLamp ? [settled.states, shared.bench(when).settled.states] : [settled.states];
  const off = new Set(idsOff(dead));
  // without a joint a net falls apart, and each piece is a feed of its own
  const isWhole = ![...off].some((id) => JOINS.has(shared.parts.get(id)?.kind ?? ""));
  // a load of which nobody has said the value may be the largest of its kind
  const settings = hasUnsaid(wiring.branches)
    ? settingsOf(wiring.branches, (branch) =>
        isUnsaid(branch) ? settingBetween(branch, 0) : nominal(branch),
      )
    : null;
  let least = Number.POSITIVE_INFINITY;
  for (const lies of states) {
    const point = held(wiring, lies, [], settings, true);
    const doubtful = held(wiring, lies, [], null, true, doubts.isDoubted);
    const tried = new Set<number>();
    const pins = feeds.flatMap((net) => {
      // of what is off, the harness's half is met at the other pins of the net
      const on = (network.nets[net]?.pins ?? []).filter((pin) => !off.has(ownerOf(pin)));
      return isWhole ? on.slice(0, 1) : on;
    });
    for (const pin of pins) {
      const feed = wiring.probe(pin);
      if (!feed.ok || tried.has(feed.node)) continue;
      tried.add(feed.node);
      if (influences(doubtful, doubts.unknowns, feed.node, back.node).length > 0) return 0;
      const seen = transfer(point, feed.node, back.node);
      if (!seen) continue;
      least = Math.min(least, (seen[feed.node] as number) - (seen[back.node] as number));
    }
  }
  return parallel(least, behind) * LEAST_SHARE;
}

/**
 * Ω of what a lamp's current comes to over diodes, all of it in parallel: 0 where a diode leads on
 * to what is not followed.
 */
function behindDiodes({ network }: Shared, feeds: readonly number[]): number {
  let ohms = Number.POSITIVE_INFINITY;
  for (const net of feeds) {
    for (const { element, forward, far } of network.nets[net]?.ways ?? []) {
      if (!forward) continue;
      if (element.law.is === "diode" && !fedNets(network).has(far)) return 0;
      if (element.law.is === "led")
        ohms = parallel(ohms, element.law.ohms * (element.law.unsaid?.[0] ?? 1));
    }
  }
  return ohms;
}

const parallel = (a: number, b: number): number => (a === 0 || b === 0 ? 0 : 1 / (1 / a + 1 / b));
