import { addTo } from "../../base/index.ts";
import { cavityRef, type Job, type Part, pinRef } from "../../job/index.ts";
import { elementsOf, pinsOf } from "../kinds/index.ts";
import type { Circuit } from "../machine-circuit.ts";
import type { Probed, Settled, Wiring } from "../solve/index.ts";

/** Where each node of a solved state is found on the machine, the most telling place first. */
export function placesOf(
  job: Job,
  circuit: Circuit,
  wiring: Wiring,
  settled: Settled,
): ReadonlyMap<number, readonly string[]> {
  const places = new Map<number, string[]>();
  const add = (probed: Probed, text: string) => {
    if (probed.ok) addTo(places, probed.node, text);
  };
  for (const part of tellingFirst(circuit.parts, job.systemVoltage)) {
    for (const pin of pinsOf(part)) {
      const ref = pinRef(part.id, pin.id);
      const harness = wiring.probe(ref, "harness");
      const own = wiring.probe(ref, "own");
      if (harness.ok && own.ok && harness.node === own.node) add(own, ref);
      else {
        add(harness, `${ref} (the harness's side)`);
        add(own, `${ref} (the part's own side)`);
      }
    }
  }
  add(wiring.probe("chassis"), "chassis");
  const linked = new Set(job.links.map(({ cavity }) => cavity));
  for (const plug of job.plugs) {
    for (const { mark } of plug.cavities) {
      const ref = cavityRef(plug.id, mark);
      if (linked.has(ref)) add(wiring.probe(ref), ref);
    }
  }
  // where an opened joint parts several wires, each half is known only by its wire
  for (const { a, b, owner, element } of settled.branches) {
    if (element !== null || owner === null) continue;
    for (const node of [a, b]) if (!places.has(node)) places.set(node, [`${owner} (an open end)`]);
  }
  return places;
}

/** A node is named after what acts there rather than after a splice in it. */
const tellingFirst = (parts: readonly Part[], systemVoltage: number): readonly Part[] => {
  const acts = (part: Part) => elementsOf(part, systemVoltage).length > 0;
  return [...parts.filter(acts), ...parts.filter((part) => !acts(part))];
};
