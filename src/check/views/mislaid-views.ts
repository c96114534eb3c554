import { addTo, sameList } from "../../base/index.ts";
import { type CavityRef, cavityRef, type Id, ownerOf, type PinRef } from "../../job/index.ts";
import { cavitiesOf, type Evidence, fitOf, isSameColour } from "../mislaid/evidence.ts";
import { mislaidAt } from "../mislaid/mislaid.ts";
import { settlingWords } from "../mislaid/words.ts";
import type { MachineWireView, MislaidView, PlugView } from "../rule.ts";
import type { Judged } from "./judged-readings.ts";
import { keepList } from "./keep.ts";
import type { Now } from "./now.ts";

interface Known {
  readonly inputs: readonly unknown[];
  readonly view: MislaidView | null;
}

/** What else was looked at already. */
export interface Seen {
  readonly judged: readonly Judged[];
  /** Another object as soon as anything changes that every prediction may follow from. */
  readonly ground: object;
  readonly plugs: readonly PlugView[];
  readonly wires: readonly MachineWireView[];
}

/**
 * Looks at the plugs where a reading is not as drawn, or where the colours of two cavities are each
 * other's: at their readings and colours, at the ties of the job and at all that a prediction follows
 * from. At any other plug nothing is worked out at all.
 */
export class MislaidViews {
  private known = new Map<Id, Known>();
  private last: readonly MislaidView[] = [];

  of(now: Now, seen: Seen): readonly MislaidView[] {
    const asked = plugsToAsk(now, seen);
    if (asked.size === 0) {
      this.known = new Map();
      this.last = keepList(this.last, []);
      return this.last;
    }
    const next: typeof this.known = new Map();
    const views = seen.plugs.flatMap((view) => {
      if (!asked.has(view.plug.id)) return [];
      const known = this.at(now, seen, view);
      next.set(view.plug.id, known);
      return known.view ?? [];
    });
    this.known = next;
    this.last = keepList(this.last, views);
    return this.last;
  }

  private at(now: Now, seen: Seen, { plug, pins }: PlugView): Known {
    const { job, machine, network } = now;
    const judged = seen.judged.filter(
      (one) => one.judged.verdict !== "invalid" && cavitiesOf(plug, one.reading).length > 0,
    );
    const here = seen.wires.filter(({ cavity }) => ownerOf(cavity) === plug.id);
    const drawn = pins.map((ref) => {
      const pin = ref === null ? undefined : network.pin(ref);
      return pin === undefined ? [] : network.wiresAt(pin);
    });
    const inputs = [
      seen.ground,
      plug,
      job.links,
      job.words,
      machine.id,
      ...judged,
      null,
      ...here.map((one) => one.here),
      ...drawn.flatMap((wires) => [null, ...wires]),
    ];
    const known = this.known.get(plug.id);
    if (known && sameList(known.inputs, inputs)) return known;
    const marks = plug.cavities.map(({ mark }) => mark);
    const byPin = new Map(
      pins.flatMap((pin, at) => (pin === null ? [] : [[pin, drawn[at] ?? []]])),
    );
    const evidence: Evidence = {
      job,
      machine,
      plug,
      readings: judged,
      colours: here.flatMap(({ cavity, here: { colour } }) => {
        const mark = marks.find((one) => cavityRef(plug.id, one) === cavity);
        return colour && mark !== undefined ? [{ mark, colour }] : [];
      }),
      pinAt: new Map(
        pins.flatMap((pin, at): [string, PinRef][] => {
          const mark = marks[at];
          return pin === null || mark === undefined ? [] : [[mark, pin]];
        }),
      ),
      drawnAt: (pin) => byPin.get(pin) ?? [],
    };
    const mislaid = mislaidAt(evidence);
    const view = mislaid && { plug, mislaid, settles: settlingWords(evidence, mislaid) };
    return { inputs, view };
  }
}

/** Plugs at which something is not as drawn that a mistaken place could explain. */
function plugsToAsk({ job }: Now, { judged, wires }: Seen): ReadonlySet<Id> {
  const found = new Set<Id>();
  for (const { reading, judged: verdict } of judged) {
    if (fitOf(job, reading, verdict) !== "differs") continue;
    for (const probe of [reading.red, reading.black])
      if (job.plugs.some(({ id }) => id === ownerOf(probe))) found.add(ownerOf(probe));
  }
  const differing = new Map<Id, CavityRef[]>();
  for (const { cavity, here, drawn } of wires) {
    const { colour } = here;
    const there = drawn.flatMap((wire) => wire.colour ?? []);
    if (!colour || there.length === 0 || there.some((one) => isSameColour(one, colour))) continue;
    addTo(differing, ownerOf(cavity), cavity);
  }
  for (const [plug, cavities] of differing) if (cavities.length > 1) found.add(plug);
  return found;
}
