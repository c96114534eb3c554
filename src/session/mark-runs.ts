const LEAST_RUN = 3;

/** Marks in a few words, runs of numbers or letters drawn together: `1 to 6, 9, A to C`. */
export function markRuns(marks: readonly string[]): string {
  const runs: string[][] = [];
  for (const mark of marks) {
    const last = runs.at(-1);
    const before = last?.at(-1);
    if (last && before !== undefined && follows(before, mark)) last.push(mark);
    else runs.push([mark]);
  }
  return runs
    .flatMap((run) => (run.length < LEAST_RUN ? run : [`${run[0]} to ${run.at(-1)}`]))
    .join(", ");
}

/** `7` after `6`, `C` after `B`; not `10` after `09`, which nobody would count on to. */
function follows(before: string, mark: string): boolean {
  if (/^[1-9]\d*$/.test(before)) return mark === String(Number(before) + 1);
  return /^[A-Ya-y]$/.test(before) && mark === String.fromCharCode(before.charCodeAt(0) + 1);
}
