import { influenceOf, type OperatingPoint, type Unknown, type Wiring } from "../solve/index.ts";

/** Which nodes of a machine depend, against their reference, on something that nobody has said. */
export interface Reach {
  /** By node: 1 where it depends on an unknown. */
  readonly isUnknown: Uint8Array;
  /** Unknowns that anything depends on. */
  readonly felt: ReadonlySet<Unknown>;
  /** Whether what lies between two nodes depends on an unknown. */
  between(a: number, b: number): boolean;
}

export function reachOfUnknowns(
  wiring: Wiring,
  point: OperatingPoint,
  unknowns: readonly Unknown[],
): Reach {
  const isUnknown = new Uint8Array(wiring.nodeCount);
  const felt = new Set<Unknown>();
  if (unknowns.length === 0) return { isUnknown, felt, between: () => false };
  const influence = influenceOf(point, [...unknowns]);
  const { piece } = influence;
  const referred = new Set(wiring.grounds.map((node) => piece[node] as number));
  for (const own of referred) {
    const unsure = influence.unsure(own);
    for (const node of unsure.nodes) isUnknown[node] = 1;
    for (const unknown of unsure.unknowns) felt.add(unknown);
  }
  // a piece that an unknown may tie to one that volts count from has no volts of its own
  for (let node = 0; node < wiring.nodeCount; node++) {
    const own = piece[node] as number;
    if (referred.has(own)) continue;
    for (const other of referred) if (influence.mayTie(own, other)) isUnknown[node] = 1;
  }
  for (const unknown of unknowns) {
    const own = new Set(unknown.nodes.map((node) => piece[node] as number));
    if (own.size > 1 && [...own].some((one) => referred.has(one))) felt.add(unknown);
  }
  return { isUnknown, felt, between: (a, b) => influence.depends(a, b) };
}
