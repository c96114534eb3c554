export interface Assignment {
  /** The column of each row. */
  readonly columns: readonly number[];
  /**
   * Whether the row may have the column as far as the cost alone goes: an assignment is cheapest
   * exactly where every row has such a column (complementary slackness).
   */
  readonly isTight: (row: number, column: number) => boolean;
}

/**
 * The assignment of rows to columns with the least total cost, by the Hungarian algorithm with
 * potentials (Kuhn 1955, Munkres 1957), O(n³). `cost` is square and of whole numbers.
 */
export function cheapestAssignment(cost: readonly (readonly number[])[]): Assignment {
  const n = cost.length;
  const rowPotential = new Float64Array(n + 1);
  const columnPotential = new Float64Array(n + 1);
  // Row assigned to each column; 0 is a place holder, real rows and columns count from 1.
  const rowOf = new Int32Array(n + 1);
  for (let row = 1; row <= n; row++) {
    const least = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
    const before = new Int32Array(n + 1);
    const used = new Uint8Array(n + 1);
    rowOf[0] = row;
    let column = 0;
    do {
      used[column] = 1;
      const at = rowOf[column] ?? 0;
      let delta = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let j = 1; j <= n; j++) {
        if (used[j]) continue;
        const reduced =
          (cost[at - 1]?.[j - 1] ?? 0) - (rowPotential[at] ?? 0) - (columnPotential[j] ?? 0);
        if (reduced < (least[j] ?? 0)) {
          least[j] = reduced;
          before[j] = column;
        }
        if ((least[j] ?? 0) < delta) {
          delta = least[j] ?? 0;
          next = j;
        }
      }
      for (let j = 0; j <= n; j++) {
        if (used[j]) {
          const assigned = rowOf[j] ?? 0;
          rowPotential[assigned] = (rowPotential[assigned] ?? 0) + delta;
          columnPotential[j] = (columnPotential[j] ?? 0) - delta;
        } else least[j] = (least[j] ?? 0) - delta;
      }
      column = next;
    } while ((rowOf[column] ?? 0) !== 0);
    while (column !== 0) {
      const previous = before[column] ?? 0;
      rowOf[column] = rowOf[previous] ?? 0;
      column = previous;
    }
  }
  const columns = new Array<number>(n).fill(0);
  for (let j = 1; j <= n; j++) columns[(rowOf[j] ?? 1) - 1] = j - 1;
  return {
    columns,
    isTight: (row, column) =>
      (cost[row]?.[column] ?? 0) ===
      (rowPotential[row + 1] ?? 0) + (columnPotential[column + 1] ?? 0),
  };
}

/**
 * Row by row the columns that it has in some cheapest assignment: those at which the rows can be
 * passed on in a ring of tight places. O(n³).
 */
export function cheapestChoices({ columns, isTight }: Assignment): readonly (readonly number[])[] {
  const rows = columns.map((_, row) => row);
  /** Rows whose column the row could take. */
  const next = rows.map((row) =>
    rows.filter((other) => other !== row && isTight(row, columns[other] ?? 0)),
  );
  const reach = rows.map((start) => {
    const seen = new Set([start]);
    for (const row of seen) for (const other of next[row] ?? []) seen.add(other);
    return seen;
  });
  return rows.map((row) => [
    columns[row] ?? 0,
    ...(next[row] ?? []).filter((other) => reach[other]?.has(row)).map((o) => columns[o] ?? 0),
  ]);
}
