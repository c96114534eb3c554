import { useRef } from "react";
import type { CheckResult } from "../../../../check/index.ts";
import type { PinRef } from "../../../../job/index.ts";
import type { Verdict } from "../../../../roles/index.ts";

/** The verdict on every pin; the same object for as long as every pin has the same one. */
export function useVerdicts({ roles }: CheckResult): ReadonlyMap<PinRef, Verdict> {
  const last = useRef<{ roles: CheckResult["roles"]; verdicts: Map<PinRef, Verdict> } | null>(null);
  if (last.current?.roles === roles) return last.current.verdicts;
  const known = last.current?.verdicts;
  const isSame =
    known?.size === roles.length && roles.every(({ pin, verdict }) => known.get(pin) === verdict);
  const verdicts =
    known && isSame ? known : new Map(roles.map(({ pin, verdict }) => [pin, verdict]));
  last.current = { roles, verdicts };
  return verdicts;
}
