import type { Arrival, Explorer } from "../../circuit/index.ts";
import { ownerOf } from "../../job/index.ts";
import { trailIds } from "../../roles/index.ts";
import { conditionInWords } from "../condition-words.ts";
import { defineRule, type Found } from "../rule.ts";

/**
 * Only what switches and traced relays bring about: what another module might do is not known, nor
 * in which state a latching relay was left.
 */
function isCertain(explorer: Explorer, { cube }: Arrival): boolean {
  for (let i = 0; i < cube.length; i += 2) {
    const variable = explorer.variables.at(cube[i] as number);
    if (variable.is !== "relay") continue;
    const part = explorer.network.parts.get(variable.part);
    if (part?.kind === "relay" && part.latching) return false;
  }
  return !explorer.commands(cube).has("unknown");
}

export const deadShort = defineRule({
  id: "dead-short",
  severity: "contradiction",
  find: ({ explorer, network }) => {
    const found: Found[] = [];
    const reported = new Set<string>();
    for (const [index, net] of network.nets.entries()) {
      const plus = net.terminals.find((one) => one.terminal === "battery-plus");
      if (!plus) continue;
      for (const arrival of explorer.shorts(index)) {
        if (!isCertain(explorer, arrival)) continue;
        const condition = conditionInWords(explorer, arrival.cube);
        const key = `${plus.pin} ${condition}`;
        if (reported.has(key)) continue;
        reported.add(key);
        const ids = trailIds(network, plus.pin, {
          legs: [{ step: arrival.step, through: null }],
          end: arrival.end.pin,
        });
        const ground = ids.at(-1) ?? ownerOf(arrival.end.pin);
        const way = ids.slice(0, -1).filter((id) => network.parts.has(id));
        found.push({
          subjects: [plus.pin, ground],
          message: `With ${condition}, battery ${ownerOf(plus.pin)} reaches ground at ${ground} with no load on the way${
            way.length > 0 ? ` (through ${way.join(", ")})` : ""
          }. Check the tracing before anything is switched on.`,
          because: [ownerOf(plus.pin), ...ids],
        });
      }
    }
    return found;
  },
});
