import { elementsOf, wire } from "../circuit/index.ts";
import { pinRef } from "../job/index.ts";
import type { ReadingSetup } from "./prediction.ts";
import type { Shared } from "./shared.ts";
import { netsByWire } from "./wire-nets.ts";

/**
 * An ammeter is a short: it stands in the place of a removed part or across an opened joint, and
 * nowhere else. One sentence why it must not go where it is meant to; null where it may.
 */
export function ammeterPlace(shared: Shared, setup: ReadingSetup): string | null {
  const { job, machine, parts } = shared;
  const { wiring } = shared.bench(setup.when);
  const nets = netsByWire(wiring);
  const netOf = (probe: string, of = wiring, own = nets) => {
    const probed = of.probe(probe);
    return probed.ok ? (own[probed.node] as number) : null;
  };
  const red = netOf(setup.red);
  const black = netOf(setup.black);
  const isPlace = (a: number | null, b: number | null) =>
    (a === red && b === black) || (a === black && b === red);

  const removed = new Set(setup.when.removed ?? []);
  for (const part of parts.values()) {
    for (const { a, b, law } of elementsOf(part, job.systemVoltage)) {
      if (!isPlace(netOf(pinRef(part.id, a)), netOf(pinRef(part.id, b)))) continue;
      if (law.is === "source" && !removed.has(part.id)) {
        return `Across ${part.id} an ammeter is a dead short: it burns, and so may you. Volts there, never amps.`;
      }
      if (removed.has(part.id)) return null;
    }
  }

  const together = wire(job, machine, { ...setup.when, unplugged: [], removed: [] });
  const joined = netsByWire(together);
  if (
    red !== black &&
    netOf(setup.red, together, joined) === netOf(setup.black, together, joined)
  ) {
    return null;
  }
  return "An ammeter belongs in the place of a removed part or across an opened joint: here it would be a short.";
}
