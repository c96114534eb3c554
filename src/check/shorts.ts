import { type Arrival, createExplorer, type Explorer, type Sight } from "../circuit/index.ts";
import { ownerOf, type PinRef } from "../job/index.ts";
import { trailIds } from "../roles/index.ts";
import { conditionInWords } from "./condition-words.ts";
import type { ShortView } from "./rule.ts";

/** The ways from a battery's plus to ground that pass no load, one for each condition. */
export function shortsFrom(sight: Sight, plus: PinRef): readonly ShortView[] {
  const net = sight.netOf(plus);
  // Of several batteries side by side the first speaks for all.
  if (net === undefined || sight.source(net) !== plus) return [];
  const explorer = createExplorer(sight, null);
  const shorts = new Map<string, ShortView>();
  for (const arrival of explorer.shorts(net)) {
    if (!isCertain(explorer, arrival)) continue;
    const condition = conditionInWords(explorer, arrival.cube);
    if (shorts.has(condition)) continue;
    const path = trailIds(sight, plus, {
      legs: [{ step: arrival.step, through: null }],
      end: arrival.end.pin,
    });
    shorts.set(condition, {
      plus,
      ground: path.at(-1) ?? ownerOf(arrival.end.pin),
      condition,
      through: path.slice(0, -1).filter((id) => sight.part(id) !== undefined),
      path,
    });
  }
  return [...shorts.values()];
}

/**
 * Only what switches and traced relays bring about: what another module might do is not known, nor
 * in which state a latching relay was left.
 */
function isCertain(explorer: Explorer, { cube }: Arrival): boolean {
  for (let i = 0; i < cube.length; i += 2) {
    const variable = explorer.variables.at(cube[i] as number);
    if (variable.is !== "relay") continue;
    const part = explorer.sight.part(variable.part);
    if (part?.kind === "relay" && part.latching) return false;
  }
  return !explorer.commands(cube).has("unknown");
}
