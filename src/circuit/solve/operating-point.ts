import type { Branch } from "./branch.ts";
import { type Conductor, type Factored, factor } from "./star-mesh.ts";

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
  readonly volts: Float64Array;
  /** Ω that each branch has there; Infinity where it does not conduct. */
  readonly ohms: Float64Array;
  /** Amps from `a` to `b` through each branch. */
  readonly amps: Float64Array;
}

/** Nothing is less, so that no conductance is infinite. */
const LEAST_OHMS = 1e-6;
const MOST_ROUNDS = 200;
/** Rounds after which only the worst junction changes its mind at a time. */
const CAREFUL_AFTER = 30;
/** A meter of 10 MΩ draws more than this from a tenth of a volt. */
const NO_AMPS = 1e-9;

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
 * `closed`: which branches are there at all. `quiet`: sources at 0 V and junctions open, as an
 * ohmmeter's own small voltage finds them, filaments cold.
 */
export function operate(
  nodeCount: number,
  branches: readonly Branch[],
  closed: (branch: Branch) => boolean,
  grounds: readonly number[],
  setting: (branch: Branch, index: number) => Setting = nominal,
  quiet = false,
): OperatingPoint {
  const settings = branches.map(setting);
  const ohms = new Float64Array(branches.length);
  const emf = new Float64Array(branches.length);
  branches.forEach((branch, index) => {
    const own = settings[index] as Setting;
    const isOpen = !closed(branch) || (quiet && branch.acts.is === "junction");
    const start = branch.acts.is === "filament" && quiet ? own.cold : own.ohms;
    ohms[index] = isOpen ? Number.POSITIVE_INFINITY : Math.max(LEAST_OHMS, start);
    emf[index] = quiet ? 0 : own.volts;
  });
  const junctions = branches.flatMap((branch, index) =>
    branch.acts.is === "junction" && Number.isFinite(ohms[index]) ? [index] : [],
  );
  const filaments = quiet
    ? []
    : branches.flatMap((branch, index) =>
        branch.acts.is === "filament" && Number.isFinite(ohms[index]) ? [index] : [],
      );

  for (let round = 0; ; round++) {
    const found = solveLinear(nodeCount, branches, ohms, emf, grounds);
    const turned = turnJunctions(found, branches, junctions, settings, ohms, round);
    const warmed = warmFilaments(found, branches, filaments, settings, ohms);
    if ((turned || warmed) && round < MOST_ROUNDS) continue;
    // one that carries nothing shows nothing: it must not lend its own volts to what hangs on it
    const idle = junctions.filter((index) => Math.abs(found.amps[index] as number) <= NO_AMPS);
    if (idle.every((index) => !Number.isFinite(ohms[index]))) return found;
    for (const index of idle) ohms[index] = Number.POSITIVE_INFINITY;
    return solveLinear(nodeCount, branches, ohms, emf, grounds);
  }
}

function solveLinear(
  nodeCount: number,
  branches: readonly Branch[],
  ohms: Float64Array,
  emf: Float64Array,
  grounds: readonly number[],
): OperatingPoint {
  const conductors: Conductor[] = [];
  const injected = new Float64Array(nodeCount);
  branches.forEach(({ a, b }, index) => {
    const own = ohms[index] as number;
    if (!Number.isFinite(own)) return;
    const siemens = 1 / own;
    conductors.push({ a, b, siemens });
    const push = siemens * (emf[index] as number);
    injected[a] = (injected[a] as number) + push;
    injected[b] = (injected[b] as number) - push;
  });
  const factored = factor(nodeCount, conductors, grounds);
  const volts = factored.solve(injected);
  const amps = new Float64Array(branches.length);
  branches.forEach(({ a, b }, index) => {
    const across = (volts[a] as number) - (volts[b] as number);
    amps[index] = (across - (emf[index] as number)) / (ohms[index] as number);
  });
  return { factored, volts, ohms: Float64Array.from(ohms), amps };
}

/** Opens junctions that would conduct backwards, closes open ones that have their voltage. */
function turnJunctions(
  found: OperatingPoint,
  branches: readonly Branch[],
  junctions: readonly number[],
  settings: readonly Setting[],
  ohms: Float64Array,
  round: number,
): boolean {
  let worst = -1;
  let worstBy = 0;
  let turned = false;
  for (const index of junctions) {
    const { a, b } = branches[index] as Branch;
    const own = settings[index] as Setting;
    const conducts = Number.isFinite(ohms[index]);
    const across = (found.volts[a] as number) - (found.volts[b] as number);
    const together = found.factored.piece[a] === found.factored.piece[b];
    const wrongBy = conducts
      ? -(found.amps[index] as number) - NO_AMPS
      : together
        ? across - own.volts - 1e-9
        : 0;
    if (wrongBy <= 0) continue;
    if (round < CAREFUL_AFTER) {
      ohms[index] = conducts ? Number.POSITIVE_INFINITY : Math.max(LEAST_OHMS, own.ohms);
      turned = true;
    } else if (wrongBy > worstBy) {
      worst = index;
      worstBy = wrongBy;
    }
  }
  if (worst >= 0) {
    const own = settings[worst] as Setting;
    ohms[worst] = Number.isFinite(ohms[worst])
      ? Number.POSITIVE_INFINITY
      : Math.max(LEAST_OHMS, own.ohms);
    return true;
  }
  return turned;
}

/**
 * Between cold and hot a filament's ohms go about with the square root of its volts (a lamp's
 * current does: common practice, no source).
 */
function warmFilaments(
  found: OperatingPoint,
  branches: readonly Branch[],
  filaments: readonly number[],
  settings: readonly Setting[],
  ohms: Float64Array,
): boolean {
  let warmed = false;
  for (const index of filaments) {
    const { a, b, acts } = branches[index] as Branch;
    if (acts.is !== "filament") continue;
    const own = settings[index] as Setting;
    const across = Math.abs((found.volts[a] as number) - (found.volts[b] as number));
    const next = Math.max(own.cold, own.ohms * Math.sqrt(across / acts.ratedVolts));
    if (Math.abs(next - (ohms[index] as number)) > 1e-6 * next) warmed = true;
    ohms[index] = Math.max(LEAST_OHMS, next);
  }
  return warmed;
}
