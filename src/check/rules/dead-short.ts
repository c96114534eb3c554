import type { Arrival, Explorer, Step } from "../../circuit/index.ts";
import { type Id, ownerOf, type PinRef } from "../../job/index.ts";
import { conditionInWords } from "../condition-words.ts";
import { defineRule, type Found } from "../rule.ts";

/** Only what switches and traced relays bring about: what another module might do is not known. */
const isCertain = (explorer: Explorer, arrival: Arrival) =>
  !explorer.commands(arrival.cube).has("unknown");

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
        const way = partsOnWay(arrival.step);
        found.push({
          subjects: [plus.pin, arrival.end.pin],
          message: `With ${condition}, battery ${ownerOf(plus.pin)} reaches ground at ${ownerOf(
            arrival.end.pin,
          )} with no load on the way${way.length > 0 ? ` (through ${way.join(", ")})` : ""}. Check the tracing before anything is switched on.`,
          because: [ownerOf(plus.pin), ...way, ownerOf(arrival.end.pin)],
        });
      }
    }
    return found;
  },
});

function partsOnWay(last: Step): readonly Id[] {
  const pins: PinRef[] = [];
  for (let step: Step | null = last; step; step = step.before) {
    if (step.via) pins.unshift(step.via.from);
  }
  return pins.map(ownerOf);
}
