import type { LinkedNetwork } from "./linked-network.ts";

interface Line {
  readonly from: number;
  readonly to: number;
  /** −1 where no wire is seen. */
  readonly wire: number;
}

/** Numbers of a net's wires that lie in no ring: ends are peeled off until only rings are left. */
export function soleWires({ linked: { joined }, pins }: LinkedNetwork, start: number) {
  const linesAt = new Map<number, Line[]>();
  pins.run(
    joined,
    start,
    () => false,
    (pin) => {
      const { start: first, list } = joined.hops;
      const lines: Line[] = [];
      for (let at = first[pin] as number; at < (first[pin + 1] as number); at += 2) {
        const to = list[at] as number;
        // a wire from a pin to itself leads nowhere
        if (to !== pin) lines.push({ from: pin, to, wire: list[at + 1] as number });
      }
      linesAt.set(pin, lines);
    },
  );
  const degree = new Map([...linesAt].map(([pin, lines]) => [pin, lines.length]));
  const gone = new Set<number>();
  const ends = [...linesAt.keys()].filter((pin) => degree.get(pin) === 1);
  const sole: number[] = [];
  for (const end of ends) {
    if (degree.get(end) !== 1) continue;
    const line = linesAt.get(end)?.find(({ to }) => !gone.has(to));
    if (!line) continue;
    gone.add(end);
    if (line.wire >= 0) sole.push(line.wire);
    const left = (degree.get(line.to) ?? 0) - 1;
    degree.set(line.to, left);
    if (left === 1) ends.push(line.to);
  }
  return sole;
}
