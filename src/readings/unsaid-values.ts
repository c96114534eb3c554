import {
  type Branch,
  held,
  nominal,
  type OperatingPoint,
  type Setting,
  type Settings,
  settingsOf,
  transfer,
  type Wiring,
} from "../circuit/index.ts";
import type { Id } from "../job/index.ts";
import { atEdge } from "./limits.ts";

/**
 * Parts whose values nobody has said: the circuit is solved with the usual size of their kind, and
 * nothing that would be otherwise with another size may be taken for known.
 */

const NO_MEASURES = { battery: null };

/** Whether a branch belongs to a part whose value nobody has said. */
export const isUnsaid = ({ element }: Branch): boolean =>
  element !== null && "unsaid" in element.law && element.law.unsaid !== undefined;

const kept = new WeakMap<readonly Branch[], boolean>();

/** Whether there is any in a machine. */
export function hasUnsaid(branches: readonly Branch[]): boolean {
  const known = kept.get(branches) ?? branches.some(isUnsaid);
  kept.set(branches, known);
  return known;
}

/** A branch of such a part with so great a share (0 to 1) of the way from its least ohms to its most. */
export function settingBetween(branch: Branch, share: number): Setting {
  const { acts } = branch;
  const own = nominal(branch);
  if (acts.is === "slide") {
    const [low, high] = acts.spread ?? [1, 1];
    const ohms = own.ohms * between(low, high, share);
    return { ...own, ohms, cold: ohms };
  }
  const [low, high] = ([-1, 1] as const).map((ohms) =>
    atEdge(branch, { ohms, volts: 1 }, NO_MEASURES),
  ) as [Setting, Setting];
  return {
    ...own,
    ohms: between(low.ohms, high.ohms, share),
    cold: between(low.cold, high.cold, share),
  };
}

const between = (low: number, high: number, share: number): number =>
  low > 0 ? low * (high / low) ** share : low + (high - low) * share;

/** Ω of a source that nothing pulls down: a healthy machine's battery bears its own loads. */
const STIFF_OHMS = 1e-5;

/** No two parts get the same share, so that no divider of two of them stays as it is by chance. */
const scattered = (count: number): number => (count * 0.618034) % 1;

/** A state solved for what its unsaid parts may make of it, its sources stiff. */
export interface Loose {
  /** With the usual sizes, and with sizes as scattered as can be. */
  readonly usual: OperatingPoint;
  readonly other: OperatingPoint;
  /** Lowest and highest V(a) − V(b) whatever the sizes, and the part that moves it most. */
  range(a: number, b: number): LooseVolts | null;
}

export interface LooseVolts {
  readonly low: number;
  readonly high: number;
  readonly by: Id;
}

/** Null where all values are said. `branches`: of the wiring, and then those held in it. */
export function looseIn(
  wiring: Wiring,
  states: ReadonlyMap<string, boolean>,
  branches: readonly Branch[],
): Loose | null {
  if (!hasUnsaid(wiring.branches)) return null;
  const extra = branches.slice(wiring.branches.length);
  const solved = (share: (index: number) => number | null): OperatingPoint => {
    let index = -1;
    const settings: Settings = settingsOf(branches, (branch) => {
      index++;
      const own = isUnsaid(branch) ? share(index) : null;
      if (own !== null) return settingBetween(branch, own);
      const usual = nominal(branch);
      return branch.acts.is === "source" ? { ...usual, ohms: STIFF_OHMS, cold: STIFF_OHMS } : usual;
    });
    return held(wiring, states, extra, settings);
  };
  const usual = solved(() => null);
  const other = solved(scattered);
  return {
    usual,
    other,
    range: (a, b) => {
      const seen = transfer(usual, a, b);
      if (!seen) return null;
      const moves = branches.map((branch, index): number => {
        if (!isUnsaid(branch)) return 0;
        const probe = (seen[branch.a] as number) - (seen[branch.b] as number);
        return Number.isFinite(usual.ohms[index]) ? probe * (usual.amps[index] as number) : 0;
      });
      const most = moves.reduce(
        (best, move, index) => (Math.abs(move) > Math.abs(moves[best] as number) ? index : best),
        0,
      );
      const volts = [-1, 1].map((edge) => {
        const point = solved((index) => ((moves[index] as number) * edge >= 0 ? 1 : 0));
        return across(point, a, b);
      });
      const all = [...volts, across(usual, a, b), across(other, a, b)];
      return { low: Math.min(...all), high: Math.max(...all), by: branches[most]?.owner ?? "" };
    },
  };
}

const across = ({ volts }: OperatingPoint, a: number, b: number): number =>
  (volts[a] as number) - (volts[b] as number);
