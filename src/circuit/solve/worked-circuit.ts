import { type Tried, warmFilaments } from "./filaments.ts";
import { closeDrivenRings, turnJunctions } from "./junctions.ts";
import type { Conducting, Net, Settings } from "./net.ts";
import { LEAST_OHMS, NO_AMPS, type OperatingPoint } from "./operating-point.ts";
import { changedMesh, type Factored, factoredOf, type Mesh, solveInto } from "./star-mesh.ts";

const MOST_ROUNDS = 200;
/** Rounds after which only one junction changes its mind at a time. */
const CAREFUL_AFTER = 30;

/**
 * A net that is kept at rest while contacts open and close: what a change does not reach is not
 * worked out again, and nothing is copied before `point` is asked for.
 *
 * `quiet`: sources at 0 V and junctions open, as an ohmmeter's own small voltage finds them,
 * filaments cold.
 */
export class WorkedCircuit {
  readonly net: Net;
  readonly settings: Settings;
  readonly quiet: boolean;
  #conducting: Conducting;
  readonly #ohms: Float64Array;
  readonly #siemens: Float64Array;
  #mesh: Mesh;
  #factored: Factored;
  readonly #volts: Float64Array;
  #changed: number[] = [];

  private constructor(
    net: Net,
    settings: Settings,
    quiet: boolean,
    conducting: Conducting,
    ohms: Float64Array,
    siemens: Float64Array,
    mesh: Mesh,
  ) {
    this.net = net;
    this.settings = settings;
    this.quiet = quiet;
    this.#conducting = conducting;
    this.#ohms = ohms;
    this.#siemens = siemens;
    this.#mesh = mesh;
    this.#factored = factoredOf(mesh);
    this.#volts = new Float64Array(net.nodeCount);
    this.#solve();
    this.#settle();
  }

  static begun(
    net: Net,
    settings: Settings,
    quiet: boolean,
    conducting: Conducting,
  ): WorkedCircuit {
    const { closed } = conducting;
    const ohms = new Float64Array(net.branches.length);
    const siemens = new Float64Array(ohms.length);
    const from = quiet ? settings.cold : settings.ohms;
    for (let index = 0; index < ohms.length; index++) {
      const own =
        closed[index] === 0
          ? Number.POSITIVE_INFINITY
          : Math.max(LEAST_OHMS, from[index] as number);
      ohms[index] = own;
      siemens[index] = 1 / own;
    }
    for (let at = 0; quiet && at < net.junctions.length; at++) {
      const index = net.junctions[at] as number;
      ohms[index] = Number.POSITIVE_INFINITY;
      siemens[index] = 0;
    }
    const begun = net.begun.of(siemens);
    const more: number[] = [];
    for (let index = begun.plan.early.length; index < ohms.length; index++) more.push(index);
    const mesh = changedMesh(begun, net.plan, siemens, more, net.work);
    return new WorkedCircuit(net, settings, quiet, conducting, ohms, siemens, mesh);
  }

  /**
   * `from`: a point of this net, or of the net that it extends, or of the whole that something is
   * out of, with nominal settings and the same `quiet`. `moved`: the branches that lie elsewhere then.
   */
  static from(
    from: OperatingPoint,
    net: Net,
    quiet: boolean,
    conducting: Conducting,
    moved: readonly number[] = [],
  ): WorkedCircuit {
    const count = net.branches.length;
    const ohms = new Float64Array(count);
    const siemens = new Float64Array(count);
    ohms.set(from.ohms);
    siemens.set(from.siemens);
    const changed: number[] = [...moved];
    const begin = (index: number) => {
      const own = firstOhms(net, conducting, net.nominal, quiet, index);
      if (own === ohms[index]) return;
      ohms[index] = own;
      siemens[index] = 1 / own;
      changed.push(index);
    };
    for (const index of turnedBetween(from, conducting, ohms)) begin(index);
    for (let index = from.ohms.length; index < count; index++) begin(index);
    const mesh = changedMesh(from.mesh, net.plan, siemens, changed, net.work);
    return new WorkedCircuit(net, net.nominal, quiet, conducting, ohms, siemens, mesh);
  }

  /** Opens and closes what is to conduct now, and brings all to rest again. */
  turn(conducting: Conducting): void {
    for (const index of turnedBetween(this.#conducting, conducting, this.#ohms))
      this.set(index, firstOhms(this.net, conducting, this.settings, this.quiet, index));
    this.#conducting = conducting;
    this.refresh();
    this.#settle();
  }

  get factored(): Factored {
    return this.#factored;
  }

  /** By node; changes with the circuit. */
  get volts(): Float64Array {
    return this.#volts;
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

  /** The connected pieces that its two ends belong to, as of the last `refresh`. */
  piecesOf(index: number): readonly [ofA: number, ofB: number] {
    const { a, b } = this.net;
    const { piece } = this.#factored;
    return [piece[a[index] as number] as number, piece[b[index] as number] as number];
  }

  together(index: number): boolean {
    const [ofA, ofB] = this.piecesOf(index);
    return ofA === ofB;
  }

  amps(index: number): number {
    const emf = this.quiet ? 0 : (this.settings.volts[index] as number);
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

  /** How all stands. The circuit is used up by it. */
  point(): OperatingPoint {
    const amps = new Float64Array(this.#ohms.length);
    const { a, b } = this.net;
    const siemens = this.#siemens;
    const volts = this.#volts;
    const emf = this.settings.volts;
    for (let index = 0; index < amps.length; index++) {
      const own = siemens[index] as number;
      if (own === 0) continue;
      const across = (volts[a[index] as number] as number) - (volts[b[index] as number] as number);
      amps[index] = (across - (this.quiet ? 0 : (emf[index] as number))) * own;
    }
    return {
      factored: this.#factored,
      mesh: this.#mesh,
      volts: this.#volts,
      ohms: this.#ohms,
      siemens: this.#siemens,
      amps,
      doubtful: this.#conducting.doubtful,
      blocked: this.quiet
        ? []
        : this.net.junctions.filter(
            (index) => this.#conducting.closed[index] === 1 && !this.conducts(index),
          ),
    };
  }

  #settle(): void {
    if (this.quiet) return;
    const { closed } = this.#conducting;
    const present = (index: number) => closed[index] === 1;
    const junctions = this.net.junctions.filter(present);
    const filaments = this.net.filaments.filter(present);
    const most = MOST_ROUNDS + 4 * junctions.length;
    const tried = new Map<number, Tried>();
    for (let round = 0; round < most; round++) {
      const turned = turnJunctions(this, junctions, round >= CAREFUL_AFTER);
      const warmed = warmFilaments(this, filaments, tried);
      if (!turned && !warmed && !closeDrivenRings(this, junctions)) break;
      this.refresh();
    }
    // one that carries nothing shows nothing: it must not lend its own volts to what hangs on it
    for (const index of junctions) {
      if (this.conducts(index) && Math.abs(this.amps(index)) <= NO_AMPS)
        this.set(index, Number.POSITIVE_INFINITY);
    }
    this.refresh();
  }

  #solve(): void {
    const { a, b, plan, pushing, work } = this.net;
    const { amps } = work;
    amps.fill(0);
    for (let i = 0; i < pushing.length && !this.quiet; i++) {
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

/** Branches that conducted before and are not to now, or the other way round. */
function turnedBetween(
  before: Pick<Conducting, "doubtful">,
  now: Conducting,
  ohms: Float64Array,
): readonly number[] {
  const same = before.doubtful === now.doubtful;
  const doubtful = same ? now.doubtful : [...before.doubtful, ...now.doubtful];
  return doubtful.filter(
    (index) => (now.closed[index] === 1) !== (ohms[index] !== Number.POSITIVE_INFINITY),
  );
}
