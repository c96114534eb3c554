import type { RoleName } from "../job/index.ts";
import type { PinRole } from "./infer.ts";
import { meaningFits, type PrintedWord } from "./printed.ts";
import type { Verdict } from "./role.ts";

export interface WordJudgement {
  readonly printedRole: RoleName | "unrecognised" | null;
  readonly verdict: Verdict;
}

/** Holds a printed word against what the circuit (or the meter) allows. */
export function judgeWord(
  word: PrintedWord,
  fits: readonly RoleName[],
  side: PinRole["side"],
): WordJudgement {
  if (word.text === null) return { printedRole: null, verdict: "unproven" };
  const first = word.meanings[0];
  if (!first) return { printedRole: "unrecognised", verdict: "unproven" };
  const fitting = word.meanings.find((meaning) => meaningFits(meaning, fits, side));
  if (!fitting) return { printedRole: first.role, verdict: "contradicted" };
  return { printedRole: fitting.role, verdict: fits.length === 1 ? "agrees" : "undecided" };
}
