import type { Id, Job } from "../../job/index.ts";

/** How many states of one drawing are kept at a time: a whole machine's takes some megabytes. */
const MOST = 12;

/** What a circuit is made of. An edit of anything else leaves all of these the same objects. */
const madeOf = (job: Job, machine: Id | null): readonly unknown[] => [
  job.diagram.wires,
  job.plugs,
  job.links,
  job.systemVoltage,
  job.machines.find(({ id }) => id === machine)?.changes,
];

interface Entry<Value> {
  readonly from: readonly unknown[];
  readonly value: Value;
}

/**
 * What was worked out for one machine's circuit, by key; the longest unused goes first, and all
 * with the drawing. A job is never changed in place: an edit makes another.
 */
export class Kept<Value> {
  readonly #byParts = new WeakMap<Job["diagram"]["parts"], Map<string, Entry<Value>>>();

  of(job: Job, machine: Id | null, key: string, make: () => Value): Value {
    const { parts } = job.diagram;
    const kept = this.#byParts.get(parts) ?? new Map<string, Entry<Value>>();
    this.#byParts.set(parts, kept);
    const from = madeOf(job, machine);
    const known = kept.get(key);
    const isSame = known?.from.every((one, index) => one === from[index]);
    const entry = known && isSame ? known : { from, value: make() };
    kept.delete(key);
    kept.set(key, entry);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST) break;
      kept.delete(oldest);
    }
    return entry.value;
  }
}
