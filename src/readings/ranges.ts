import {
  type Branch,
  joinedSettings,
  type Settings,
  settingsOf,
  type Wiring,
} from "../circuit/index.ts";
import { atEdge, type Limits } from "./limits.ts";

/** Within what each branch of a healthy machine may lie, by its index. */
export interface Ranges {
  /** Nodes of each branch. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly low: Settings;
  readonly high: Settings;
  /** 1 for a junction. */
  readonly junction: Uint8Array;
  readonly slides: readonly Slide[];
}

/** One half of a potentiometer's track. */
export interface Slide {
  readonly index: number;
  readonly owner: string | null;
  readonly rising: boolean;
  /** Factors on the whole track, where nobody has said its ohms. */
  readonly spread?: readonly [number, number];
}

type Values = Pick<Ranges, "low" | "high" | "junction" | "slides">;

const kept = new WeakMap<readonly Branch[], WeakMap<Limits, Values>>();

/** Of a whole machine: worked out once for all that act alike, wherever the switches stand and whatever is out. */
export function rangesOf({ net: { a, b, like } }: Pick<Wiring, "net">, limits: Limits): Ranges {
  const ofBranches = kept.get(like) ?? new WeakMap<Limits, Values>();
  kept.set(like, ofBranches);
  const found = ofBranches.get(limits) ?? valuesOf(like, limits);
  ofBranches.set(limits, found);
  return { a, b, ...found };
}

/** Of a few branches that are held between the probes. */
export const rangesOfHeld = (branches: readonly Branch[], limits: Limits): Ranges => ({
  a: Int32Array.from(branches, ({ a }) => a),
  b: Int32Array.from(branches, ({ b }) => b),
  ...valuesOf(branches, limits),
});

const valuesOf = (branches: readonly Branch[], limits: Limits): Values => ({
  low: settingsOf(branches, (branch) => atEdge(branch, { ohms: -1, volts: -1 }, limits)),
  high: settingsOf(branches, (branch) => atEdge(branch, { ohms: 1, volts: 1 }, limits)),
  junction: Uint8Array.from(branches, ({ acts }) => (acts.is === "junction" ? 1 : 0)),
  slides: branches.flatMap(({ acts, owner }, index) =>
    acts.is === "slide"
      ? [{ index, owner, rising: acts.rising, ...(acts.spread ? { spread: acts.spread } : {}) }]
      : [],
  ),
});

/** Of one list and of another that goes on after it. */
export function joinedRanges(first: Ranges, second: Ranges): Ranges {
  const shift = first.a.length;
  return {
    a: joined(new Int32Array(shift + second.a.length), first.a, second.a),
    b: joined(new Int32Array(shift + second.a.length), first.b, second.b),
    low: joinedSettings(first.low, second.low),
    high: joinedSettings(first.high, second.high),
    junction: joined(new Uint8Array(shift + second.a.length), first.junction, second.junction),
    slides: [
      ...first.slides,
      ...second.slides.map((slide) => ({ ...slide, index: slide.index + shift })),
    ],
  };
}

function joined<Numbers extends Int32Array | Uint8Array>(
  both: Numbers,
  first: Numbers,
  second: Numbers,
): Numbers {
  both.set(first);
  both.set(second, first.length);
  return both;
}
