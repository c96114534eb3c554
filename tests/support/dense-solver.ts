/** A slow, obvious solver to hold the real one against: Gaussian elimination on the full matrix. */
export interface DenseBranch {
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  /** Volts that the branch lifts `a` over `b`; 0 for a plain resistor. */
  readonly volts: number;
}

/** Volts of each node against node 0, with which all must hang together. */
export function denseVolts(nodeCount: number, branches: readonly DenseBranch[]): number[] {
  const size = nodeCount - 1;
  const rows = Array.from({ length: size }, () => new Array<number>(size + 1).fill(0));
  const addTo = (row: number, column: number, value: number) => {
    if (row > 0 && column > 0) {
      const line = rows[row - 1] as number[];
      line[column - 1] = (line[column - 1] as number) + value;
    }
  };
  const push = (node: number, amps: number) => {
    if (node > 0) {
      const line = rows[node - 1] as number[];
      line[size] = (line[size] as number) + amps;
    }
  };
  for (const { a, b, ohms, volts } of branches) {
    const g = 1 / ohms;
    addTo(a, a, g);
    addTo(b, b, g);
    addTo(a, b, -g);
    addTo(b, a, -g);
    push(a, g * volts);
    push(b, -g * volts);
  }
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column; row < size; row++) {
      if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[pivot]?.[column] ?? 0)) pivot = row;
    }
    [rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]];
    const top = rows[column] as number[];
    for (let row = column + 1; row < size; row++) {
      const line = rows[row] as number[];
      const factor = (line[column] as number) / (top[column] as number);
      for (let at = column; at <= size; at++) {
        line[at] = (line[at] as number) - factor * (top[at] as number);
      }
    }
  }
  const volts = new Array<number>(nodeCount).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    const line = rows[row] as number[];
    let rest = line[size] as number;
    for (let column = row + 1; column < size; column++) {
      rest -= (line[column] as number) * (volts[column + 1] as number);
    }
    volts[row + 1] = rest / (line[row] as number);
  }
  return volts;
}
