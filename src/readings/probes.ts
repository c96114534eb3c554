import type { Bench, OperatingPoint, Side } from "../circuit/index.ts";
import {
  invalidReading,
  type Prediction,
  type ReadingSetup,
  uncertainReading,
} from "./prediction.ts";

/** The nodes that the two leads are on. */
export interface Placed {
  readonly red: number;
  readonly black: number;
}

/** Where both probes go, or why one of them can't. */
export function place(
  bench: Pick<Bench, "wiring">,
  setup: Pick<ReadingSetup, "red" | "black">,
  sides: { red?: Side; black?: Side } = {},
): Placed | Prediction {
  const [problem] = bench.wiring.problems;
  if (problem !== undefined) return invalidReading(problem);
  const red = bench.wiring.probe(setup.red, sides.red);
  const black = bench.wiring.probe(setup.black, sides.black);
  for (const probed of [red, black]) {
    if (!probed.ok)
      return probed.why === "nothing"
        ? invalidReading(probed.sentence)
        : uncertainReading(probed.sentence);
  }
  return red.ok && black.ok
    ? { red: red.node, black: black.node }
    : invalidReading("A probe is on nothing.");
}

/** Ω between the leads; `seen` is what a source of 1 A between them raises each node to. */
export const ohmsOf = (seen: Float64Array, { red, black }: Placed): number =>
  (seen[red] as number) - (seen[black] as number);

/** How far apart, Ω, the leads see those nodes that hang together with the red one; 0 for fewer than two. */
export function spreadSeen(
  point: OperatingPoint,
  seen: Float64Array,
  nodes: readonly number[],
  red: number,
): number {
  const { piece } = point.factored;
  const felt = nodes
    .filter((node) => piece[node] === piece[red])
    .map((node) => seen[node] as number);
  return felt.length < 2 ? 0 : Math.max(...felt) - Math.min(...felt);
}

export const isPrediction = (found: object): found is Prediction => "predicted" in found;

/** `Depends on what A1 does and on whether K1 pulls in.` */
export const dependsSentence = (whats: readonly string[]): string =>
  `Depends on ${[...new Set(whats)].join(" and on ")}.`;

/** Below these, in the quantity's own unit, stands only what ideal contacts leave behind. */
const NOTHING_LEFT = { volts: 1e-6, ohms: 1e-4, amps: 1e-9 } as const;

export const clean = (value: number, unit: keyof typeof NOTHING_LEFT): number =>
  Math.abs(value) < NOTHING_LEFT[unit] ? 0 : Number(value.toPrecision(7));
