import type { OperatingPoint, Settled } from "../circuit/index.ts";

/** Volts and amps that an ohmmeter does not notice. */
const NO_VOLTS = 0.02;
const NO_AMPS = 0.001;
/** Share of the meter's own current below which a branch is not on its way. */
const ON_THE_WAY = 1e-3;

/** Why an ohmmeter must not go there, one sentence; null where the circuit is dead. */
export function liveCircuit(
  { point, branches }: Settled,
  dead: OperatingPoint,
  seen: Float64Array | null,
  red: number,
  black: number,
): string | null {
  const sentence = (why: string) =>
    `Ohms can't be measured on a live circuit: ${why}; take its feed away first.`;
  const volts = [red, black].map((node) => Math.abs(point.volts[node] as number));
  const highest = Math.max(...volts);
  if (highest > NO_VOLTS) return sentence(`there are ${highest.toFixed(1)} V at a probe`);
  if (!seen) return null;
  const carries = branches.findIndex(({ a, b }, index) => {
    const ohms = dead.ohms[index] as number;
    if (!Number.isFinite(ohms)) return false;
    const share = Math.abs((seen[a] as number) - (seen[b] as number)) / ohms;
    return share > ON_THE_WAY && Math.abs(point.amps[index] as number) > NO_AMPS;
  });
  if (carries < 0) return null;
  const owner = branches[carries]?.owner;
  return sentence(owner ? `current flows through ${owner}` : "current flows on the way");
}
