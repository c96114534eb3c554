import { addTo, sameList } from "../../base/index.ts";
import {
  type CavityRef,
  cavityRef,
  type Id,
  type MachineWire,
  ownerOf,
  type PinRef,
  type Plug,
  type Wire,
} from "../../job/index.ts";
import { type MarksSay, saidByMarks } from "../mislaid/by-marks.ts";
import { cavitiesOf, type Evidence, fitOf, isSameColour } from "../mislaid/evidence.ts";
import { mislaidAt } from "../mislaid/mislaid-at.ts";
import { settlingWords } from "../mislaid/words.ts";
import type { MachineWireView, MislaidView, PlugView } from "../rule.ts";
import type { Judged } from "./judged-readings.ts";
import { isSame, keepList, Last } from "./keep.ts";
import type { Now } from "./now.ts";

interface Known {
  readonly inputs: readonly unknown[];
  readonly view: MislaidView | null;
}

/** Views, and ids of the plugs that are to be looked at again. */
export interface MislaidSoFar {
  readonly views: readonly MislaidView[];
  readonly again: readonly Id[];
}

/** A plug with all that what is said of it follows from. */
interface Asked extends Pick<PlugView, "plug" | "pins"> {
  readonly now: Now;
  readonly marks: MarksSay | null;
  readonly valid: readonly Judged[];
  readonly here: readonly MachineWireView[];
  readonly drawn: readonly (readonly Wire[])[];
  readonly inputs: readonly unknown[];
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
 * Looks at the plugs where a reading is not as drawn, where two colours are not, or whose marks say
 * something by themselves: at their readings and colours, at the other readings of the machine, at
 * the ties of the job and at all that a prediction follows from. At any other plug nothing is worked
 * out at all.
 */
export class MislaidViews {
  private known = new Map<Id, Known>();
  private last: readonly MislaidView[] = [];
  private readonly marks = new Last<ReadonlyMap<Id, MarksSay>>();

  of(now: Now, seen: Seen): readonly MislaidView[] {
    return this.over(now, seen, (asked) => this.at(asked)).views;
  }

  /**
   * What is known without working anything out from readings, with the plugs that are to be looked at
   * again; `isJudged`: whether every reading is judged as the job is now.
   */
  soFar(now: Now, seen: Seen, isJudged: boolean): MislaidSoFar {
    if (isJudged)
      return this.over(now, seen, (asked) =>
        asked.valid.length === 0 || this.knownAt(asked) ? this.at(asked) : null,
      );
    const there = new Set(seen.plugs.map(({ plug }) => plug.id));
    this.last = keepList(
      this.last,
      this.last.filter(({ plug }) => there.has(plug.id)),
    );
    return { views: this.last, again: [] };
  }

  /** Works out one of the plugs to be looked at again. */
  step(now: Now, seen: Seen, plug: Id): void {
    const marks = this.marksOf(now);
    const view = seen.plugs.find((one) => one.plug.id === plug);
    if (view) this.known.set(plug, this.at(this.asked(now, seen, view, marks.get(plug) ?? null)));
  }

  private marksOf({ job: { plugs }, machine: { wires } }: Now): ReadonlyMap<Id, MarksSay> {
    return this.marks.of([plugs, wires], (before) => marksOf(plugs, wires, before));
  }

  /** `work` gives null for what is left for later: what was known of it stands meanwhile. */
  private over(now: Now, seen: Seen, work: (asked: Asked) => Known | null): MislaidSoFar {
    const marks = this.marksOf(now);
    const plugs = plugsToAsk(now, seen, marks);
    const next: typeof this.known = new Map();
    const again: Id[] = [];
    const views = seen.plugs.flatMap((view) => {
      const { id } = view.plug;
      if (!plugs.has(id)) return [];
      const found = work(this.asked(now, seen, view, marks.get(id) ?? null));
      if (!found) again.push(id);
      const known = found ?? this.known.get(id);
      if (known) next.set(id, known);
      return known?.view ?? [];
    });
    this.known = next;
    this.last = keepList(this.last, views);
    return { views: this.last, again };
  }

  private knownAt({ plug, inputs }: Asked): Known | null {
    const known = this.known.get(plug.id);
    return known && sameList(known.inputs, inputs) ? known : null;
  }

  private asked(now: Now, seen: Seen, { plug, pins }: PlugView, marks: MarksSay | null): Asked {
    const { job, machine, network } = now;
    const valid = seen.judged.filter((one) => one.judged.verdict !== "invalid");
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
      marks,
      ...valid,
      null,
      ...here.map((one) => one.here),
      ...drawn.flatMap((wires) => [null, ...wires]),
    ];
    return { now, plug, pins, marks, valid, here, drawn, inputs };
  }

  private at(asked: Asked): Known {
    const known = this.knownAt(asked);
    if (known) return known;
    const { plug, pins, marks, valid, here, drawn, inputs } = asked;
    const { job, machine } = asked.now;
    const judged = valid.filter((one) => cavitiesOf(plug, one.reading).length > 0);
    const list = plug.cavities.map(({ mark }) => mark);
    const byPin = new Map(
      pins.flatMap((pin, at) => (pin === null ? [] : [[pin, drawn[at] ?? []]])),
    );
    const pinAt = new Map(
      pins.flatMap((pin, at): [string, PinRef][] => {
        const mark = list[at];
        return pin === null || mark === undefined ? [] : [[mark, pin]];
      }),
    );
    const evidence: Evidence = {
      job,
      machine,
      plug,
      readings: judged,
      elsewhere: valid.filter((one) => !judged.includes(one)),
      colours: here.flatMap(({ cavity, here: { colour } }) => {
        const mark = list.find((one) => cavityRef(plug.id, one) === cavity);
        return colour && mark !== undefined ? [{ mark, colour }] : [];
      }),
      pinAt,
      drawnColours: (mark) => {
        const pin = pinAt.get(mark);
        return (pin === undefined ? [] : (byPin.get(pin) ?? [])).flatMap(
          ({ colour }) => colour ?? [],
        );
      },
    };
    const mislaid = mislaidAt(evidence);
    const settles = mislaid ? settlingWords(evidence, mislaid) : "";
    const view = mislaid || marks ? { plug, mislaid, marks, settles } : null;
    return { inputs, view };
  }
}

/** Plugs at which something is not as drawn that a mistaken place could explain. */
function plugsToAsk(
  { job }: Now,
  { judged, wires }: Seen,
  marks: ReadonlyMap<Id, MarksSay>,
): ReadonlySet<Id> {
  const found = new Set<Id>(marks.keys());
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

/** What the marks of each plug say, where they say anything; the same objects as before where they say the same. */
function marksOf(
  plugs: readonly Plug[],
  wires: readonly MachineWire[],
  before: ReadonlyMap<Id, MarksSay> | undefined,
): ReadonlyMap<Id, MarksSay> {
  const at = new Map<Id, MachineWire[]>();
  for (const wire of wires) addTo(at, ownerOf(wire.cavity), wire);
  const found = new Map<Id, MarksSay>();
  for (const plug of plugs) {
    const says = saidByMarks(plug, at.get(plug.id) ?? []);
    if (says === null) continue;
    const known = before?.get(plug.id);
    found.set(plug.id, known && isSame(known, says) ? known : says);
  }
  return found;
}
