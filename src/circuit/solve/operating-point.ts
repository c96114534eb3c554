import type { Branch } from "./branch.ts";
import type { Net, Settings } from "./net.ts";
import { changedMesh, type Factored, factoredOf, type Mesh, meshOf, voltsOf } from "./star-mesh.ts";

/** Numbers that a branch has in one solution: nominal, or at an edge of what is healthy. */
export interface Setting {
  /** Ω; of a filament, hot. */
  readonly ohms: number;
  /** Of a filament; equal to `ohms` for all else. */
  readonly cold: number;
  /** Volts of a source or junction; 0 for all else. */
  readonly volts: number;
}

/** Node voltages of one state of the machine, contacts given, lamps and diodes consistent. */
export interface OperatingPoint {
  readonly factored: Factored;
  readonly mesh: Mesh;
  readonly volts: Float64Array;
  /** Ω that each branch has there; Infinity where it does not conduct. */
  readonly ohms: Float64Array;
  /** Amps from `a` to `b` through each branch. */
  readonly amps: Float64Array;
}

/** Nothing is less, so that no conductance is infinite. */
const LEAST_OHMS = 1e-6;
const MOST_ROUNDS = 200;
/** Rounds after which only one junction changes its mind at a time. */
const CAREFUL_AFTER = 30;
/** A meter of 10 MΩ draws more than this from a tenth of a volt. */
const NO_AMPS = 1e-9;
/** A filament's ohms have settled when they change by less than this share. */
const SETTLED = 1e-6;

export function nominal(branch: Branch): Setting {
  const { acts } = branch;
  switch (acts.is) {
    case "ohmic":
      return { ohms: acts.ohms, cold: acts.ohms, volts: 0 };
    case "slide":
      return { ohms: acts.track / 2, cold: acts.track / 2, volts: 0 };
    case "filament":
      return { ohms: acts.hot, cold: acts.cold, volts: 0 };
    case "source":
    case "junction":
      return { ohms: acts.ohms, cold: acts.ohms, volts: acts.volts };
  }
}

/**
 * `closed`: 1 for each branch that is there at all. `quiet`: sources at 0 V and junctions open, as
 * an ohmmeter's own small voltage finds them, filaments cold. `from`: a point of this net, or of
 * the net that it extends, found with the same settings and the same `quiet`, to start from: what
 * is as it was there is not worked out again.
 */
export function operate(
  net: Net,
  closed: Uint8Array,
  settings: Settings,
  quiet: boolean,
  from: OperatingPoint | null,
): OperatingPoint {
  const circuit = new Circuit(
    net,
    settings,
    quiet,
    startingOhms(net, closed, settings, quiet, from),
    from,
  );
  const present = (index: number) => closed[index] === 1 && !quiet;
  const junctions = net.junctions.filter(present);
  const filaments = net.filaments.filter(present);
  const most = MOST_ROUNDS + 4 * junctions.length;
  for (let round = 0; round < most; round++) {
    const turned = turnJunctions(circuit, junctions, round >= CAREFUL_AFTER);
    const warmed = warmFilaments(circuit, filaments);
    if (!turned && !warmed) break;
    circuit.refresh();
  }
  // one that carries nothing shows nothing: it must not lend its own volts to what hangs on it
  for (const index of junctions) {
    if (circuit.conducts(index) && Math.abs(circuit.amps(index)) <= NO_AMPS)
      circuit.set(index, Number.POSITIVE_INFINITY);
  }
  return circuit.point();
}

function startingOhms(
  { branches }: Net,
  closed: Uint8Array,
  settings: Settings,
  quiet: boolean,
  from: OperatingPoint | null,
): Float64Array {
  const start = new Float64Array(branches.length);
  for (let index = 0; index < branches.length; index++) {
    const { is } = (branches[index] as Branch).acts;
    const was = from && index < from.ohms.length ? (from.ohms[index] as number) : null;
    let own = (quiet ? settings.cold : settings.ohms)[index] as number;
    if (closed[index] === 0 || (quiet && is === "junction")) own = Number.POSITIVE_INFINITY;
    else if (is === "filament" && was !== null && was !== Number.POSITIVE_INFINITY) own = was;
    else if (is === "junction" && was !== null) own = was;
    start[index] = Math.max(LEAST_OHMS, own);
  }
  return start;
}

/** A net being brought to rest: ohms are set, and what they lead to is worked out when asked for. */
class Circuit {
  readonly net: Net;
  readonly settings: Settings;
  readonly #quiet: boolean;
  readonly #ohms: Float64Array;
  readonly #siemens: Float64Array;
  #mesh: Mesh;
  #factored: Factored;
  #volts: Float64Array;
  #changed: number[] = [];

  constructor(
    net: Net,
    settings: Settings,
    quiet: boolean,
    ohms: Float64Array,
    from: OperatingPoint | null,
  ) {
    this.net = net;
    this.settings = settings;
    this.#quiet = quiet;
    this.#ohms = ohms;
    this.#siemens = ohms.map((own) => 1 / own);
    const changed: number[] = [];
    if (from) {
      for (let index = 0; index < ohms.length; index++)
        if (ohms[index] !== from.ohms[index]) changed.push(index);
    }
    this.#mesh = from
      ? changedMesh(from.mesh, net.plan, this.#siemens, changed)
      : meshOf(net.plan, this.#siemens);
    this.#factored = factoredOf(this.#mesh);
    this.#volts = this.#solve();
  }

  set(index: number, ohms: number): void {
    this.#ohms[index] = ohms;
    this.#siemens[index] = 1 / ohms;
    this.#changed.push(index);
  }

  ohms = (index: number): number => this.#ohms[index] as number;

  conducts = (index: number): boolean => this.#ohms[index] !== Number.POSITIVE_INFINITY;

  /** Of `a` over `b`, with the changes of before the last call of `refresh`. */
  across(index: number): number {
    const { a, b } = this.net.branches[index] as Branch;
    return (this.#volts[a] as number) - (this.#volts[b] as number);
  }

  together(index: number): boolean {
    const { a, b } = this.net.branches[index] as Branch;
    return this.#factored.piece[a] === this.#factored.piece[b];
  }

  amps(index: number): number {
    return (this.across(index) - this.#emf(index)) * (this.#siemens[index] as number);
  }

  /** Works out what the ohms that were set lead to. */
  refresh(): void {
    if (this.#changed.length === 0) return;
    this.#mesh = changedMesh(this.#mesh, this.net.plan, this.#siemens, this.#changed, true);
    this.#factored = factoredOf(this.#mesh);
    this.#changed = [];
    this.#volts = this.#solve();
  }

  point(): OperatingPoint {
    this.refresh();
    const amps = new Float64Array(this.#ohms.length);
    const { branches } = this.net;
    for (let index = 0; index < amps.length; index++) {
      const { a, b } = branches[index] as Branch;
      amps[index] =
        ((this.#volts[a] as number) - (this.#volts[b] as number) - this.#emf(index)) *
        (this.#siemens[index] as number);
    }
    return {
      factored: this.#factored,
      mesh: this.#mesh,
      volts: this.#volts,
      ohms: this.#ohms,
      amps,
    };
  }

  #emf = (index: number): number => (this.#quiet ? 0 : (this.settings.volts[index] as number));

  #solve(): Float64Array {
    const injected = new Float64Array(this.net.nodeCount);
    for (const index of this.net.pushing) {
      const { a, b } = this.net.branches[index] as Branch;
      const push = (this.#siemens[index] as number) * this.#emf(index);
      injected[a] = (injected[a] as number) + push;
      injected[b] = (injected[b] as number) - push;
    }
    return voltsOf(this.#mesh, injected);
  }
}

/**
 * Opens junctions that would conduct backwards, closes open ones that have their voltage: all of
 * them at once, or when that goes on and on the first alone, which comes to an end (Murty's least
 * index rule for complementary pivoting).
 */
function turnJunctions(circuit: Circuit, junctions: readonly number[], oneOnly: boolean): boolean {
  let turned = false;
  const wrong = junctions.filter((index) => {
    if (circuit.conducts(index)) return -circuit.amps(index) - NO_AMPS > 0;
    const volts = circuit.settings.volts[index] as number;
    return circuit.across(index) - volts - 1e-9 > 0 && circuit.together(index);
  });
  for (const index of oneOnly ? wrong.slice(0, 1) : wrong) {
    const own = circuit.settings.ohms[index] as number;
    circuit.set(
      index,
      circuit.conducts(index) ? Number.POSITIVE_INFINITY : Math.max(LEAST_OHMS, own),
    );
    turned = true;
  }
  return turned;
}

/**
 * Between cold and hot a filament's ohms go about with the square root of its volts (a lamp's
 * current does: common practice, no source).
 */
function warmFilaments(circuit: Circuit, filaments: readonly number[]): boolean {
  let warmed = false;
  for (const index of filaments) {
    const { acts } = circuit.net.branches[index] as Branch;
    if (acts.is !== "filament") continue;
    const cold = circuit.settings.cold[index] as number;
    const hot = circuit.settings.ohms[index] as number;
    const across = Math.abs(circuit.across(index));
    const next = Math.max(LEAST_OHMS, cold, hot * Math.sqrt(across / acts.ratedVolts));
    if (Math.abs(next - circuit.ohms(index)) <= SETTLED * next) continue;
    circuit.set(index, next);
    warmed = true;
  }
  return warmed;
}
