const lengthOf = (text: string) => [...text].length;

/** Columns as wide as their widest cell, two spaces between, nothing trailing. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const widths = head.map((title, column) =>
    Math.max(lengthOf(title), ...rows.map((row) => lengthOf(row[column] ?? ""))),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => cell + " ".repeat(Math.max(0, (widths[column] ?? 0) - lengthOf(cell))))
      .join("  ")
      .trimEnd();
  return [line(head), ...rows.map(line)];
}
