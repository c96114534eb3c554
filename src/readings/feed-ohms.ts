import { held, influences, nominal, transfer } from "../circuit/index.ts";
import type { When } from "../job/index.ts";
import { batteriesOf } from "./cavity-pins.ts";
import { feedNets } from "./feed-nets.ts";
import type { Shared } from "./shared.ts";

/** Loads as drawn may be this much smaller on the machine. */
const LEAST_SHARE = 0.4;

/**
 * The fewest ohms that any feed of the machine could show to chassis with the battery away: the
 * loads that hang on it, in parallel. 0 where an unknown part hangs on one, or nothing is drawn.
 */
export const leastFeedOhms = (shared: Shared, when: When): number =>
  shared.once(`least feed ohms ${JSON.stringify(when)}`, () => ({ ohms: leastOf(shared, when) }))
    .ohms;

function leastOf(shared: Shared, when: When): number {
  const { network } = shared;
  const feeds = [...feedNets(network)];
  if (feeds.length === 0) return 0;
  const dead: When = {
    ...when,
    removed: [...new Set([...(when.removed ?? []), ...batteriesOf(shared)])],
  };
  const { wiring, settled, doubts } = shared.bench(dead);
  const point = held(wiring, settled.states, [], nominal, true);
  const doubtful = held(wiring, settled.states, [], nominal, true, doubts.isDoubted);
  const chassis = wiring.probe("chassis");
  if (!chassis.ok) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const net of feeds) {
    const pin = network.nets[net]?.pins[0];
    const feed = pin === undefined ? null : wiring.probe(pin);
    if (!feed?.ok) continue;
    if (influences(doubtful, doubts.unknowns, feed.node, chassis.node).length > 0) return 0;
    const seen = transfer(point, feed.node, chassis.node);
    if (!seen) continue;
    least = Math.min(least, (seen[feed.node] as number) - (seen[chassis.node] as number));
  }
  return least * LEAST_SHARE;
}
