/** Words out of a job file may hold control characters: a terminal must not obey them. */
export const plainText = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]+/gu, " ");

/** Rows set in columns, the head first. */
export function tableOf(
  head: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const all = [head, ...rows.map((row) => row.map(plainText))];
  const widths = head.map((_, column) => Math.max(...all.map((row) => (row[column] ?? "").length)));
  return all.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd(),
  );
}
