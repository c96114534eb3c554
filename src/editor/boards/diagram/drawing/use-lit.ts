import { useMemo, useRef } from "react";
import type { CheckResult } from "../../../../check/index.ts";
import type { Job } from "../../../../job/index.ts";
import { type Counterparts, counterparts } from "../../../../session/index.ts";

/** What lights up with the selection; the same object for as long as the same things do. */
export function useLit(
  job: Job,
  analysis: CheckResult,
  selection: readonly string[],
): Counterparts {
  const found = useMemo(() => counterparts(job, analysis, selection), [job, analysis, selection]);
  const last = useRef(found);
  if (last.current !== found && !isSame(last.current, found)) last.current = found;
  return last.current;
}

const isSame = (a: Counterparts, b: Counterparts): boolean =>
  a.refs.size === b.refs.size &&
  [...a.refs].every((ref) => b.refs.has(ref)) &&
  a.path.length === b.path.length &&
  a.path.every((id, place) => id === b.path[place]);
