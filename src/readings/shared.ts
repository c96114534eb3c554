import {
  type Bench,
  type Between,
  buildNetwork,
  circuitOf,
  held,
  type Network,
  type OperatingPoint,
  setUp,
  wire,
} from "../circuit/index.ts";
import type { Id, Job, Machine, Part, When } from "../job/index.ts";
import {
  type AsMeasured,
  asMeasured,
  type Measures,
  measuresAt,
  type TakenAt,
} from "./as-measured.ts";
import type { HealthyState } from "./band.ts";
import type { Limits } from "./limits.ts";

/**
 * What all readings of one machine have in common: its circuit, and every state of it that was
 * solved so far. A state is solved once for all cavities, and a voltmeter hardly ever needs a
 * state of its own: its 10 MΩ are put to the solved state afterwards.
 */
export interface Shared {
  /** With the battery as measured; roles and rules go by the drawing, readings by this. */
  readonly job: Job;
  readonly machine: Id;
  readonly measured: Omit<AsMeasured, "job">;
  readonly network: Network;
  readonly parts: ReadonlyMap<Id, Part>;
  /** Contacts without ohms, what is held between two points in place. */
  bench(when: When, extra?: readonly Between[]): Bench;
  /** The same state without its sources, filaments cold, as an ohmmeter finds it. */
  dead(when: When): OperatingPoint;
  /** The same state with real joints. */
  healthy(when: When, bench: Bench): Healthy;
  /** A small thing worked out before under this key, else what `make` makes. */
  once<T extends object>(key: string, make: () => T): T;
  /** The same for something as large as a solved state: only the latest few are kept. */
  recent<T extends object>(key: string, make: () => T): T;
}

export interface Healthy extends HealthyState {
  /** The nominal point of the state, nothing held in it. */
  readonly middle: OperatingPoint;
}

/** States kept solved at a time, the latest used: as many as make this many parts and wires. */
const MOST_KEPT = 300_000;
const MOST_STATES = 256;
const LEAST_STATES = 16;
const MOST_ANSWERS = 20_000;

function makeShared(job: Job, machine: Id, measures: Measures): Shared {
  const { job: own, ...measured } = asMeasured(job, machine, measures);
  const circuit = circuitOf(own, machine);
  const size = circuit.parts.length + circuit.wires.length;
  const most = Math.floor(MOST_KEPT / Math.max(1, size));
  const states = new Latest<object>(Math.max(LEAST_STATES, Math.min(MOST_STATES, most)));
  const answers = new Latest<object>(MOST_ANSWERS);
  const parts = new Map(circuit.parts.map((part) => [part.id, part]));
  // the same objects in every state, so that what is kept by them is found again
  const rested: Limits = { battery: measured.battery };
  // cranking pulls any battery down, however it stood at rest
  const cranking: Limits = { battery: null };
  let network: Network | null = null;
  const bench: Shared["bench"] = (when, extra = []) =>
    states.of(`bench ${JSON.stringify([when, extra])}`, () => setUp(own, machine, when, extra));
  return {
    job: own,
    machine,
    measured,
    parts,
    get network() {
      network ??= buildNetwork(circuit, own.systemVoltage);
      return network;
    },
    bench,
    dead: (when) =>
      states.of(`dead ${JSON.stringify(when)}`, () => {
        const { wiring, settled } = bench(when);
        return held(wiring, settled.states, [], null, true);
      }),
    healthy: (when, bench) =>
      states.of(`healthy ${keyOfState(when, bench)}`, () => {
        const wiring = wire(own, machine, when, "real");
        const lies = bench.settled.states;
        return {
          wiring,
          states: lies,
          limits: when.engine === "cranking" ? cranking : rested,
          middle: held(wiring, lies, []),
        };
      }),
    once: (key, make) => answers.of(key, make),
    recent: (key, make) => states.of(key, make),
  };
}

/** What is held between two points may have pulled a relay in: then it is another state. */
const keyOfState = (when: When, { settled }: Bench): string =>
  `${JSON.stringify(when)} ${[...settled.states.values()].map(Number).join("")}`;

/** The latest so many things by key. */
class Latest<T> {
  readonly #kept = new Map<string, T>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What is kept under a key is always of one type: its first word says which. */
  of<U extends T>(key: string, make: () => U): U {
    const known = this.#kept.get(key) as U | undefined;
    const value = known ?? make();
    this.#kept.delete(key);
    this.#kept.set(key, value);
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > this.#most && oldest !== undefined) this.#kept.delete(oldest);
    return value;
  }
}

/** What the shared things follow from, beside the diagram. */
interface Ground {
  readonly links: Job["links"];
  readonly plugs: Job["plugs"];
  readonly standIns: Job["standIns"];
  /** What the user has taught: by it a line is told for a sensor's or not. */
  readonly words: Job["words"];
  readonly systemVoltage: number;
  readonly machines: Map<
    Id,
    { readonly changes: Machine["changes"]; readonly kept: Latest<Shared> }
  >;
}

/** Days with first checks of their own that are kept at a time, for each machine. */
const MOST_DAYS = 4;

const byDiagram = new WeakMap<Job["diagram"], Ground>();

const circuitThings = ({ diagram, links, plugs }: Job): readonly object[] => [
  diagram,
  diagram.parts,
  diagram.wires,
  links,
  plugs,
];

/**
 * Promises that the circuit of a job will not be changed in place any more, so that what is solved
 * for one reading serves all the others. Returns the job.
 */
export function settle(job: Job): Job {
  for (const thing of circuitThings(job)) Object.freeze(thing);
  return job;
}

/**
 * The job itself where nothing of its circuit can be changed in place, else a copy of it whose circuit
 * can't, so that what is solved for one reading serves all the others.
 */
export function settledCopy(job: Job): Job {
  if (circuitThings(job).every(Object.isFrozen)) return job;
  const { diagram, links, plugs } = job;
  const { parts, wires } = diagram;
  return settle({
    ...job,
    diagram: { ...diagram, parts: [...parts], wires: [...wires] },
    links: [...links],
    plugs: [...plugs],
  });
}

/**
 * The same for every reading of a machine for as long as its circuit stays the same object: while
 * somebody enters readings nothing that was worked out before needs working out again. A job that
 * may still be changed in place gets a fresh one at each call.
 */
export function sharedFor(job: Job, machine: Id, taken: TakenAt = "now"): Shared {
  const { changes, firstChecks = [] } = job.machines.find(({ id }) => id === machine) ?? {};
  const measures = measuresAt(firstChecks, taken);
  const make = () => makeShared(job, machine, measures);
  if (!circuitThings(job).every(Object.isFrozen)) return make();
  const { machines } = groundOf(job);
  const known = machines.get(machine);
  const own =
    known && known.changes === changes ? known : { changes, kept: new Latest<Shared>(MOST_DAYS) };
  machines.set(machine, own);
  return own.kept.of(`${measures.rest} ${measures.leads}`, make);
}

function groundOf({ diagram, links, plugs, standIns, words, systemVoltage }: Job): Ground {
  const known = byDiagram.get(diagram);
  if (
    known?.links === links &&
    known.plugs === plugs &&
    known.standIns === standIns &&
    known.words === words &&
    known.systemVoltage === systemVoltage
  ) {
    return known;
  }
  const fresh: Ground = { links, plugs, standIns, words, systemVoltage, machines: new Map() };
  byDiagram.set(diagram, fresh);
  return fresh;
}
