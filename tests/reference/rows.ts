import { existsSync, readFileSync } from "node:fs";

/** Where the published values lie beside a checkout that has them; a bare clone does not. */
const FOLDER = new URL("../../../shared/reference/", import.meta.url);

/** A table of published values, one record a row; null, said aloud, when it is not there. */
export function referenceRows(name: string): Record<string, string>[] | null {
  const file = new URL(name, FOLDER);
  if (!existsSync(file)) {
    console.warn(`SKIPPED: the reference table ${name} is not beside this checkout`);
    return null;
  }
  const [head = [], ...rows] = readFileSync(file, "utf8").trim().split(/\r?\n/).map(cellsOf);
  return rows.map((cells) =>
    Object.fromEntries(head.map((column, index) => [column, cells[index] ?? ""])),
  );
}

/** Cells of one line, where a quoted cell may hold commas. */
const cellsOf = (line: string): string[] =>
  [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );
