import { type Branch, transfer } from "../../circuit/index.ts";
import type { FaultTrial } from "./trial-fault.ts";

/**
 * Ω by which two nodes must differ as the probes see them: what a touch of the two moves the reading
 * by is this times its amps, half a volt at 1,000 A (our own, cautious).
 */
const FELT_OHMS = 5e-4;

/** Whether the probes, or a relay that matters to them, may feel it when two nodes touch. */
export function feltTouches({
  healthy: { wiring },
  sound: { point },
  placed,
}: FaultTrial): (a: number, b: number) => boolean {
  const { piece } = point.factored;
  const feelerAt = (red: number, black: number) => {
    const seen = transfer(point, red, black);
    return (a: number, b: number): boolean => {
      if (seen && piece[a] === piece[red] && piece[b] === piece[red])
        return Math.abs((seen[a] as number) - (seen[b] as number)) >= FELT_OHMS;
      // two pieces become one: felt where a probe's own is among them
      const own = [piece[red], piece[black]];
      return piece[a] !== piece[b] && (own.includes(piece[a]) || own.includes(piece[b]));
    };
  };
  type Feeler = ReturnType<typeof feelerAt>;
  const feelers: Feeler[] = [feelerAt(placed.red, placed.black)];
  const contacts = new Map<string, Branch[]>();
  for (const branch of wiring.branches) {
    if (branch.gate === null) continue;
    contacts.set(branch.gate.by, [...(contacts.get(branch.gate.by) ?? []), branch]);
  }
  const waiting = new Set(wiring.deciders);
  // relays that matter, and relays that matter to those
  for (const feels of feelers) {
    for (const decider of waiting) {
      const moves = (contacts.get(decider.id) ?? []).some(({ a, b }) => feels(a, b));
      if (!moves && decider.is !== "fed") continue;
      waiting.delete(decider);
      if (decider.is === "coil") feelers.push(feelerAt(decider.a, decider.b));
      else if (decider.is === "fed")
        for (const [plus, minus] of decider.pairs) feelers.push(feelerAt(plus, minus));
      else if (decider.input !== null) {
        const { input } = decider;
        for (const ground of decider.grounds) feelers.push(feelerAt(input, ground));
      }
    }
  }
  return (a, b) => feelers.some((feels) => feels(a, b));
}
