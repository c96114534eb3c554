import type { Branch } from "./branch.ts";
import type { Conducting, Net, Settings } from "./net.ts";
import {
  changedMesh,
  type Factored,
  factoredOf,
  type Mesh,
  meshOf,
  solveInto,
} from "./star-mesh.ts";

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
  /** The inverse. */
  readonly siemens: Float64Array;
  /** Amps from `a` to `b` through each branch. */
  readonly amps: Float64Array;
  /** The only branches that could be kept from conducting. */
  readonly doubtful: readonly number[];
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
 * `quiet`: sources at 0 V and junctions open, as an ohmmeter's own small voltage finds them,
 * filaments cold. `from`: a point of this net, or of the net that it extends, found with the same
 * settings and the same `quiet`: what is as it was there is not worked out again.
 */
export function operate(
  net: Net,
  conducting: Conducting,
  settings: Settings,
  quiet: boolean,
  from: OperatingPoint | null,
): OperatingPoint {
  const circuit = from
    ? resumed(net, conducting, settings, quiet, from)
    : begun(net, conducting, settings, quiet);
  const { closed } = conducting;
  const present = (index: number) => closed[index] === 1;
  const junctions = quiet ? [] : net.junctions.filter(present);
  const filaments = quiet ? [] : net.filaments.filter(present);
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
  return { ...circuit.point(), doubtful: conducting.doubtful };
}

/** Ω with which a branch begins; Infinity where it does not conduct. */
function firstOhms(
  { branches }: Net,
  { closed }: Conducting,
  settings: Settings,
  quiet: boolean,
  index: number,
): number {
  if (closed[index] === 0) return Number.POSITIVE_INFINITY;
  if (quiet && branches[index]?.acts.is === "junction") return Number.POSITIVE_INFINITY;
  return Math.max(LEAST_OHMS, (quiet ? settings.cold : settings.ohms)[index] as number);
}

function begun(
  net: Net,
  conducting: Conducting,
  settings: Settings,
  quiet: boolean,
): WorkedCircuit {
  const ohms = new Float64Array(net.branches.length);
  for (let index = 0; index < ohms.length; index++)
    ohms[index] = firstOhms(net, conducting, settings, quiet, index);
  const siemens = ohms.map((own) => 1 / own);
  return new WorkedCircuit(net, settings, quiet, ohms, siemens, meshOf(net.plan, siemens));
}

function resumed(
  net: Net,
  conducting: Conducting,
  settings: Settings,
  quiet: boolean,
  from: OperatingPoint,
): WorkedCircuit {
  const count = net.branches.length;
  const ohms = new Float64Array(count);
  const siemens = new Float64Array(count);
  ohms.set(from.ohms);
  siemens.set(from.siemens);
  const changed: number[] = [];
  const begin = (index: number) => {
    const own = firstOhms(net, conducting, settings, quiet, index);
    if (own === ohms[index]) return;
    ohms[index] = own;
    siemens[index] = 1 / own;
    changed.push(index);
  };
  const { doubtful } = conducting;
  for (const index of from.doubtful === doubtful ? doubtful : [...from.doubtful, ...doubtful]) {
    const isClosed = conducting.closed[index] === 1;
    if (isClosed !== (ohms[index] !== Number.POSITIVE_INFINITY)) begin(index);
  }
  for (let index = from.ohms.length; index < count; index++) begin(index);
  const mesh = changedMesh(from.mesh, net.plan, siemens, changed, net.work);
  return new WorkedCircuit(net, settings, quiet, ohms, siemens, mesh);
}

/** A net being brought to rest: ohms are set, and `refresh` works out what they lead to. */
class WorkedCircuit {
  readonly net: Net;
  readonly settings: Settings;
  readonly #quiet: boolean;
  readonly #ohms: Float64Array;
  readonly #siemens: Float64Array;
  #mesh: Mesh;
  #factored: Factored;
  readonly #volts: Float64Array;
  #changed: number[] = [];

  /** The arrays and the mesh are its own from now on. */
  constructor(
    net: Net,
    settings: Settings,
    quiet: boolean,
    ohms: Float64Array,
    siemens: Float64Array,
    mesh: Mesh,
  ) {
    this.net = net;
    this.settings = settings;
    this.#quiet = quiet;
    this.#ohms = ohms;
    this.#siemens = siemens;
    this.#mesh = mesh;
    this.#factored = factoredOf(mesh);
    this.#volts = new Float64Array(net.nodeCount);
    this.#solve();
  }

  set(index: number, ohms: number): void {
    this.#ohms[index] = ohms;
    this.#siemens[index] = 1 / ohms;
    this.#changed.push(index);
  }

  ohms(index: number): number {
    return this.#ohms[index] as number;
  }

  conducts(index: number): boolean {
    return this.#ohms[index] !== Number.POSITIVE_INFINITY;
  }

  /** Of `a` over `b`, as of the last `refresh`. */
  across(index: number): number {
    const { a, b } = this.net;
    return (
      (this.#volts[a[index] as number] as number) - (this.#volts[b[index] as number] as number)
    );
  }

  together(index: number): boolean {
    const { a, b } = this.net;
    const { piece } = this.#factored;
    return piece[a[index] as number] === piece[b[index] as number];
  }

  amps(index: number): number {
    const emf = this.#quiet ? 0 : (this.settings.volts[index] as number);
    return (this.across(index) - emf) * (this.#siemens[index] as number);
  }

  /** Works out what the ohms that were set lead to. */
  refresh(): void {
    if (this.#changed.length === 0) return;
    this.#mesh = changedMesh(
      this.#mesh,
      this.net.plan,
      this.#siemens,
      this.#changed,
      this.net.work,
      true,
    );
    this.#factored = factoredOf(this.#mesh);
    this.#changed = [];
    this.#solve();
  }

  point(): Omit<OperatingPoint, "doubtful"> {
    this.refresh();
    const amps = new Float64Array(this.#ohms.length);
    for (let index = 0; index < amps.length; index++)
      amps[index] = this.#siemens[index] === 0 ? 0 : this.amps(index);
    return {
      factored: this.#factored,
      mesh: this.#mesh,
      volts: this.#volts,
      ohms: this.#ohms,
      siemens: this.#siemens,
      amps,
    };
  }

  #solve(): void {
    const { a, b, plan, pushing, work } = this.net;
    const { amps } = work;
    amps.fill(0);
    for (let i = 0; i < pushing.length && !this.#quiet; i++) {
      const index = pushing[i] as number;
      const siemens = this.#siemens[index] as number;
      if (siemens === 0) continue;
      const push = siemens * (this.settings.volts[index] as number);
      const from = plan.place[a[index] as number] as number;
      const to = plan.place[b[index] as number] as number;
      amps[from] = (amps[from] as number) + push;
      amps[to] = (amps[to] as number) - push;
    }
    solveInto(this.#mesh, amps, this.#volts);
  }
}

/**
 * Opens junctions that would conduct backwards, closes open ones that have their voltage: all of
 * them at once, or when that goes on and on the first alone, which comes to an end (Murty's least
 * index rule for complementary pivoting).
 */
function turnJunctions(
  circuit: WorkedCircuit,
  junctions: readonly number[],
  oneOnly: boolean,
): boolean {
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
function warmFilaments(circuit: WorkedCircuit, filaments: readonly number[]): boolean {
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
