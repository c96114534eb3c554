import type { Branch, Decider, Unknown } from "./branch.ts";
import { held, isActive, type Settled } from "./follow.ts";
import { influenceOf } from "./influence.ts";
import type { OperatingPoint } from "./operating-point.ts";
import type { Wiring } from "./wiring.ts";

/** What nobody knows about a settled state. */
export interface Doubts {
  readonly unknowns: readonly Unknown[];
  /** Branches that may or may not conduct. */
  isDoubted(branch: Branch): boolean;
  /** The state with every doubted branch open: where each unknown's influence is felt in full. */
  readonly point: OperatingPoint;
}

/**
 * The declared unknowns, fuses that would blow (`overloaded`), and the contacts of every relay or
 * module whose own state depends on an unknown.
 */
export function findDoubts(
  wiring: Wiring,
  settled: Settled,
  extra: readonly Branch[],
  overloaded: readonly Branch[],
): Doubts {
  const unknowns: Unknown[] = [...wiring.unknowns];
  const fuses = new Set(overloaded.map(({ owner }) => owner));
  for (const { a, b, owner } of overloaded) {
    unknowns.push({
      part: owner ?? "",
      nodes: [a, b],
      joint: true,
      what: `whether ${owner} holds: as drawn it carries far more than its rating`,
    });
  }
  const doubted = new Set<string>();
  const isDoubted = ({ gate, element, owner }: Branch) =>
    (gate !== null && doubted.has(gate.by)) ||
    (element?.law.is === "protection" && fuses.has(owner));
  const contacts = new Map<string, Branch[]>();
  for (const branch of settled.branches) {
    if (branch.gate === null) continue;
    const known = contacts.get(branch.gate.by);
    if (known) known.push(branch);
    else contacts.set(branch.gate.by, [branch]);
  }
  const doubt = (decider: Decider) => {
    doubted.add(decider.id);
    unknowns.push(...doubtsAbout(decider, contacts.get(decider.id) ?? []));
  };
  const open = () =>
    fuses.size + doubted.size === 0
      ? settled.point
      : held(wiring, settled.states, extra, null, false, isDoubted);

  for (const decider of wiring.deciders) {
    if (
      remembers(decider, settled, wiring.systemVoltage) ||
      settled.oscillating.includes(decider.id)
    )
      doubt(decider);
  }
  let point = open();
  for (let grown = unknowns.length > 0; grown; ) {
    grown = false;
    const influence = influenceOf(point, [...unknowns]);
    for (const decider of wiring.deciders) {
      if (doubted.has(decider.id)) continue;
      const moved =
        (decider.is === "level" && decider.power !== null && doubted.has(decider.power)) ||
        pairsOf(decider).some(([a, b]) => influence.depends(a, b));
      if (!moved) continue;
      doubt(decider);
      grown = true;
    }
    if (grown) point = open();
  }
  return { unknowns, isDoubted, point };
}

/** Whether what it does hangs on what went before, and not on the present voltages alone. */
function remembers(decider: Decider, settled: Settled, systemVoltage: number): boolean {
  if (decider.is === "coil") return decider.latching;
  if (decider.is === "fed") return false;
  if (decider.power !== null && !settled.states.get(decider.power)) return false;
  switch (decider.does) {
    case "toggle":
      return true;
    case "flash":
      return isActive(decider, settled.point, systemVoltage);
    case "delay-off":
      return !isActive(decider, settled.point, systemVoltage);
    case "follow":
    case "invert":
    case "delay-on":
      return false;
  }
}

function pairsOf(decider: Decider): readonly (readonly [number, number])[] {
  switch (decider.is) {
    case "coil":
      return [[decider.a, decider.b]];
    case "fed":
      return decider.pairs;
    case "level":
      return decider.grounds.flatMap((ground) =>
        decider.input === null ? [] : [[decider.input, ground] as const],
      );
  }
}

const doubtsAbout = (decider: Decider, contacts: readonly Branch[]): readonly Unknown[] =>
  contacts.map((branch) => ({
    part: decider.part,
    nodes: [branch.a, branch.b],
    joint: branch.acts.is !== "source",
    what: doubtAbout(decider),
  }));

function doubtAbout(decider: Decider): string {
  if (decider.is === "level" && decider.does === "flash")
    return `which half of its flash ${decider.part} is in`;
  if (decider.is === "level" && (decider.does === "toggle" || decider.does === "delay-off"))
    return `what ${decider.part} has been told before`;
  if (decider.is !== "coil") return `what ${decider.part} is told to do`;
  return decider.latching
    ? `which way ${decider.part} was last latched`
    : `whether ${decider.part} pulls in`;
}
