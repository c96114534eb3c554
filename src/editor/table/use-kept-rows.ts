import { useRef } from "react";
import type { PinRow } from "../../session/index.ts";

/** The rows, where one says the same as before as the same object as before. */
export function useKeptRows(rows: readonly PinRow[]): readonly PinRow[] {
  const last = useRef<{ from: readonly PinRow[]; kept: readonly PinRow[] } | null>(null);
  if (last.current?.from === rows) return last.current.kept;
  const before = new Map(last.current?.kept.map((row) => [row.key, row]));
  const kept = rows.map((row) => {
    const old = before.get(row.key);
    return old && isSame(old, row, DEPTH) ? old : row;
  });
  last.current = { from: rows, kept };
  return kept;
}

/** A row, its facts of the wire and its lists, and what is in those; deeper things stay or are others. */
const DEPTH = 3;

function isSame(a: unknown, b: unknown, depth: number): boolean {
  if (Object.is(a, b)) return true;
  if (depth === 0 || !isThing(a) || !isThing(b)) return false;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  return (
    left.length === right.length &&
    left.every(([name, value]) => Object.hasOwn(b, name) && isSame(value, b[name], depth - 1))
  );
}

const isThing = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;
