import { useMemo } from "react";
import type { When } from "../../../job/index.ts";
import type { TrialOutcome } from "../../../readings/index.ts";
import { useAnswer } from "../../session-context.tsx";

/** What a trial does on the machine at hand as drawn; null while it is worked out beside the screen. */
export function useTrialOutcome(when: When): TrialOutcome | null {
  return useAnswer(useMemo(() => ({ about: "trial", when }) as const, [when]));
}
