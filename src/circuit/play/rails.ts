import { Groups } from "../../base/index.ts";
import type { Branch, OperatingPoint, Wiring } from "../solve/index.ts";

/** Ω within a module's or generator's source up to which its line is a feed, and not a mere pull-up. */
const STIFF_SOURCE = 10;
/** Share of system voltage from which it is one, and not a sensor's supply. */
const FEED_SHARE = 0.4;

/** Joined to a live pole, to ground, or by a dead short to both. */
export type Rail = "live" | "ground" | "both";

/** The rail that each node is joined to by nothing but wires and closed contacts; null for none. */
export function railsOf(
  { branches, grounds, nodeCount, systemVoltage }: Wiring,
  { ohms }: OperatingPoint,
): (node: number) => Rail | null {
  const conducts = (index: number) => Number.isFinite(ohms[index]);
  const lines = new Groups(nodeCount);
  branches.forEach((branch, index) => {
    if (conducts(index) && isLine(branch)) lines.join(branch.a, branch.b);
  });
  const poles = findPoles(branches, conducts, FEED_SHARE * systemVoltage);
  const chassis = lines.of(grounds.at(-1) as number);
  // a battery with plus on the frame: all that hangs on its other pole is live against that
  const isTurned = poles.some(
    ({ a, b, isBattery }) => isBattery && lines.of(a) === chassis && lines.of(b) !== chassis,
  );
  const live = new Set(poles.map(({ a }) => lines.of(a)));
  if (isTurned) {
    live.delete(chassis);
    for (const { b, isBattery } of poles) if (isBattery) live.add(lines.of(b));
  }
  const ground = new Set(isTurned ? [chassis] : grounds.map((node) => lines.of(node)));
  return (node) => {
    const line = lines.of(node);
    if (!ground.has(line)) return live.has(line) ? "live" : null;
    return live.has(line) ? "both" : "ground";
  };
}

/** Joins by what it is, not by its ohms: a wire, or a contact or fuse that is closed. */
function isLine({ element, acts }: Branch): boolean {
  if (!element) return acts.is === "ohmic";
  const { is } = element.law;
  return is === "protection" || is === "contact" || is === "relay-contact" || is === "module-path";
}

interface Poles {
  readonly a: number;
  readonly b: number;
  readonly isBattery: boolean;
}

/** Plus and minus of all that drives now. */
const findPoles = (
  branches: readonly Branch[],
  conducts: (index: number) => boolean,
  leastVolts: number,
): readonly Poles[] =>
  branches.flatMap(({ a, b, acts, element }, index): Poles[] => {
    if (acts.is !== "source" || !conducts(index)) return [];
    const isBattery = element?.law.is === "source" && element.law.live === "always";
    const isFeed = acts.ohms <= STIFF_SOURCE && acts.volts >= leastVolts;
    return isBattery || isFeed ? [{ a, b, isBattery }] : [];
  });
