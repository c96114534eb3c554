import { useEffect, useMemo } from "react";
import { type OrderedFinding, orderFindings, rememberOrder } from "../../session/index.ts";
import { useAnalysis, useSelected } from "../session-context.tsx";

/** Order in which each job's findings were last shown; outlives the panel, not the visit. */
const remembered = new Map<string, readonly string[]>();

/** The findings of the machine at hand, each at the place where it was before the last edit. */
export function useOrderedFindings(): readonly OrderedFinding[] {
  const key = useSelected((state) => `${state.key}/${state.machine}`);
  const { findings } = useAnalysis();
  const ordered = useMemo(
    () => orderFindings(findings, remembered.get(key) ?? []),
    [findings, key],
  );
  useEffect(() => {
    remembered.set(key, rememberOrder(ordered, remembered.get(key) ?? []));
  }, [ordered, key]);
  return ordered;
}
